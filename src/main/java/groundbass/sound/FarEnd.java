package groundbass.sound;

import java.util.Arrays;

/** Where the string is stopped: all that a turn through its loop loses and spreads, in one place. */
final class FarEnd {
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

    /** Lets samples pass, in place. */
    void pass(double[] samples, int from, int count) {
        double a = loss.a();
        double b = loss.b();
        double c = spread.c();
        double lost = states[0];
        double s1 = states[1];
        double s2 = states[2];
        double s3 = states[3];
        double s4 = states[4];
        for (int i = from; i < from + count; i++) {
            lost = b * samples[i] + a * lost;
            double x = lost;
            double y = c * x + s1;
            s1 = x - c * y;
            x = c * y + s2;
            s2 = y - c * x;
            y = c * x + s3;
            s3 = x - c * y;
            x = c * y + s4;
            s4 = y - c * x;
            samples[i] = x;
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
