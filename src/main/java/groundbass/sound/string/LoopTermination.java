package groundbass.sound.string;

import java.util.Arrays;

/** Where the string is stopped: all that a turn through its loop loses and spreads, in one place. */
final class LoopTermination {
    private LoopFilter loss = new LoopFilter(0, 0);
    private Dispersion spread = new Dispersion(0);
    private final double[] states = new double[Dispersion.SECTIONS + 1];

    /** How a turn goes from now on. */
    void become(LoopFilter newLoss, Dispersion newSpread) {
        loss = newLoss;
        spread = newSpread;
    }

    void rest() {
        Arrays.fill(states, 0);
    }

    /** By how many samples a turn is longer than the loop's delay. */
    double delay(double radians) {
        return loss.delay(radians) + spread.delay(radians);
    }

    /** Lets samples pass, in place. Each all-pass has one state, {@code s = (1 - c^2) x - c s}, and gives {@code c x + s}. */
    void pass(double[] samples, int from, int count) {
        double a = loss.a();
        double b = loss.b();
        double c = spread.c();
        double lost = states[0];
        double s1 = states[1];
        double s2 = states[2];
        double s3 = states[3];
        double s4 = states[4];
        double k = 1 - c * c;
        for (int i = from; i < from + count; i++) {
            lost = b * samples[i] + a * lost;
            double y1 = c * lost + s1;
            s1 = k * lost - c * s1;
            double y2 = c * y1 + s2;
            s2 = k * y1 - c * s2;
            double y3 = c * y2 + s3;
            s3 = k * y2 - c * s3;
            double y4 = c * y3 + s4;
            s4 = k * y3 - c * s4;
            samples[i] = y4;
        }
        states[0] = lost;
        states[1] = s1;
        states[2] = s2;
        states[3] = s3;
        states[4] = s4;
    }

    /** As if these samples had passed as well as what did. They are overwritten. */
    void passed(double[] samples) {
        var before = states.clone();
        rest();
        pass(samples, 0, samples.length);
        for (int i = 0; i < states.length; i++) {
            states[i] += before[i];
        }
    }
}
