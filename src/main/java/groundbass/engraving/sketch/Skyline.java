package groundbass.engraving.sketch;

import java.util.Arrays;

/** How far marks reach in one direction from a staff, along its width. */
public final class Skyline {
    private static final double STEP = 0.2;
    private static final double MARGIN = 20;

    private final double[] reach;

    /** A line along a staff of this width; marks may stick out at both ends. */
    Skyline(double width, double floor) {
        reach = new double[(int) Math.ceil((width + 2 * MARGIN) / STEP)];
        Arrays.fill(reach, floor);
    }

    /** @param outward how far, counted away from the staff */
    void raise(double left, double right, double outward) {
        for (int i = index(left); i <= index(right); i++) {
            reach[i] = Math.max(reach[i], outward);
        }
    }

    double over(double left, double right) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = index(left); i <= index(right); i++) {
            most = Math.max(most, reach[i]);
        }
        return most;
    }

    /** The least distance at which this line and one that faces it do not touch. */
    public double facing(Skyline that) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < Math.min(reach.length, that.reach.length); i++) {
            most = Math.max(most, reach[i] + that.reach[i]);
        }
        return most;
    }

    double highest() {
        return Arrays.stream(reach).max().orElse(0);
    }

    private int index(double x) {
        return Math.max(0, Math.min(reach.length - 1, (int) Math.floor((x + MARGIN) / STEP)));
    }
}
