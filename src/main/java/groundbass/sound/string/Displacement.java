package groundbass.sound.string;

import groundbass.sound.unit.OnePole;

/**
 * What a stroke leaves in the string at the moment when it is let go, as one period of the wave in its loop. A string
 * drawn aside at a place is a triangle: odd about the bridge. A struck one moves there, towards the neck: its wave is a
 * box, even about the bridge. (Ideal string, any acoustics textbook.) Corners are rounded as the finger or thumb is.
 */
final class Displacement {
    /** How far a blow drives the string, of its period, so that equal amounts are about as loud as a drawn one. */
    private static final double STRIKE_LEVEL = 0.08;

    /** Samples before and after the period in which the rounding settles. */
    private static final int SETTLING = 160;

    private final double period;
    private final double place;
    private final double pull;
    private final double strike;
    private final double contact;

    /**
     * @param period in samples
     * @param place where the string is touched, as a fraction of what sounds, from the bridge
     * @param contact samples for which a blow touches the string
     */
    Displacement(double period, double place, double pull, double strike, double contact) {
        this.period = period;
        this.place = place;
        this.pull = pull * period * place * (1 - place);
        this.strike = strike * STRIKE_LEVEL * period;
        this.contact = contact / period;
    }

    /**
     * The wave so many samples behind the loop's newest one: index 0 is unused. What is older has lost less.
     *
     * @param decay how much of it is left after each sample
     */
    double[] rounded(OnePole forth, OnePole back, double bridge, double decay, int count) {
        var wave = new double[count + 2 * SETTLING];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = forth.low(at((i - SETTLING - bridge) / period));
        }
        for (int i = wave.length - 1; i >= 0; i--) {
            wave[i] = back.low(wave[i]);
        }
        var shape = new double[count];
        double age = 1;
        for (int i = 0; i < count; i++) {
            shape[i] = age * wave[SETTLING + i];
            age /= decay;
        }
        return shape;
    }

    /** @param turns from the bridge, 1 for the whole period */
    private double at(double turns) {
        double t = turns - Math.rint(turns);
        return box(Math.abs(t)) - drawn(t);
    }

    private double drawn(double t) {
        double x = 2 * Math.abs(t);
        double height = x < place ? x / place : (1 - x) / (1 - place);
        return Math.copySign(pull / 2 * height, t);
    }

    /** Nothing at the far end, where whatever is lost would make a step of it. */
    private double box(double t) {
        if (strike == 0) {
            return 0;
        }
        double edge = (place / 2 - t) / contact;
        return strike * step(edge);
    }

    /** From 0 to 1 along the integral of a raised cosine. */
    private static double step(double u) {
        if (u <= -0.5 || u >= 0.5) {
            return u < 0 ? 0 : 1;
        }
        return 0.5 + u + StrictMath.sin(2 * Math.PI * u) / (2 * Math.PI);
    }
}
