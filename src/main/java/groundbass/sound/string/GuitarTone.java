package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.OnePole;
import java.util.Arrays;

/** One string of a guitar, struck once and let go of once. Its figures are by trial, no source. */
final class GuitarTone {
    /** To -60 dB at A2; a shorter string falls sooner. */
    private static final double T60 = 7;

    private static final double T60_HERTZ = 110;
    private static final double LOSS = 0.04;
    private static final double STIFFNESS = 6e-5;
    private static final double PLACE = 0.22;
    private static final double BRIGHTNESS = 2_600;
    private static final double NORMAL_VELOCITY = 64;
    private static final double LEVEL = 0.2;
    private static final double DAMPED_SECONDS = 0.15;
    private static final float INAUDIBLE = 1e-4f;

    private final SampleRate rate;
    private final double hertz;
    private final double level;
    private final long from;
    private final long until;
    private final float damping;
    private final float[] buffer = new float[32];
    private PluckedString string;
    private float gain = 1;

    /** @param velocity of a key, 64 for a normal stroke */
    GuitarTone(SampleRate rate, double hertz, int velocity, long from, long until) {
        this.rate = rate;
        this.hertz = hertz;
        this.level = velocity / NORMAL_VELOCITY;
        this.from = from;
        this.until = until;
        this.damping = (float) rate.decay(DAMPED_SECONDS);
    }

    long from() {
        return from;
    }

    boolean isOver() {
        return gain < INAUDIBLE || string.isSilent();
    }

    /** Adds the next samples; the first are those in which it is struck. */
    void render(float[] out, int count, long now) {
        int skipped = (int) Math.max(0, from - now);
        if (string == null) {
            strike();
        }
        Arrays.fill(buffer, 0);
        string.render(buffer, 0, count - skipped);
        for (int i = skipped; i < count; i++) {
            gain *= now + i < until ? 1 : damping;
            out[i] += buffer[i - skipped] * gain;
        }
    }

    private void strike() {
        double t60 = T60 * StrictMath.sqrt(T60_HERTZ / hertz);
        var loss = LoopFilter.of(rate, hertz, t60, LOSS);
        string = new PluckedString(rate, hertz, 1);
        string.rest(hertz, loss, Dispersion.of(rate, hertz, STIFFNESS, loss));
        double bright = BRIGHTNESS * Math.min(1.4, Math.max(0.7, level));
        string.load(new Displacement(rate.hertz() / hertz, PLACE, LEVEL * level, 0, 1)
                .rounded(
                        new OnePole(rate, bright),
                        new OnePole(rate, bright),
                        string.bridge(),
                        rate.decay(t60),
                        string.shapeLength()));
    }
}
