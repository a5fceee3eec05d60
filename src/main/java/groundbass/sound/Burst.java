package groundbass.sound;

/**
 * What a stroke feeds into the string's loop, as the velocity of the string. A string drawn aside at {@code place} and let
 * go carries a wave of two levels that sum to nothing over a period; a struck one carries a short pulse and its
 * reflection. (Ideal string, any acoustics textbook.)
 */
final class Burst {
    /** How long a thumb is in touch with the string (REFERENCE 7.2: 1 to 3 ms). */
    private static final double CONTACT_SECONDS = 0.002;

    /** Of the pulse against the drawn wave, so that equal amounts are about equally loud. */
    private static final double STRIKE_LEVEL = 1.2;

    private static final double TAIL_SECONDS = 0.005;

    private Burst() {}

    /** @param level 1 for a normal stroke */
    static float[] of(SampleRate rate, Touch touch, double hertz, double level, int seed) {
        double period = rate.hertz() / hertz;
        double bright = touch.brightness() * Math.min(1.2, 0.5 + 0.5 * level);
        var first = new OnePole(rate, bright);
        var second = new OnePole(rate, bright);
        var grain = new Noise(seed);
        double fade = rate.decay(touch.noiseSeconds());
        double noise = touch.noise();
        double longest = Math.max(period, touch.noise() > 0 ? touch.noiseSeconds() * rate.hertz() : 0);
        var burst = new float[(int) (longest + TAIL_SECONDS * rate.hertz())];
        for (int n = 0; n < burst.length; n++) {
            double x = wave(rate, touch, period, n) + noise * grain.next();
            burst[n] = (float) (level * second.low(first.low(x)));
            noise *= fade;
        }
        return burst;
    }

    private static double wave(SampleRate rate, Touch touch, double period, int n) {
        double reflected = touch.place() * period;
        double drawn = n >= period ? 0 : n < reflected ? 1 - touch.place() : -touch.place();
        double contact = CONTACT_SECONDS * rate.hertz();
        double struck = pulse(n / contact) - pulse((n - reflected) / contact);
        return touch.pull() * drawn + touch.strike() * STRIKE_LEVEL * struck;
    }

    /** A raised cosine from 0 to 1. */
    private static double pulse(double share) {
        return share <= 0 || share >= 1 ? 0 : 0.5 - 0.5 * StrictMath.cos(2 * Math.PI * share);
    }
}
