package groundbass.sound;

import java.util.Arrays;

/**
 * A string as a loop: a delay of one period, what a turn loses, and a pickup that hears a wave and its reflection
 * (Karplus and Strong 1983, Jaffe and Smith 1983). The delay is read between samples by a cubic (Lagrange) rather than an
 * all-pass, so that slides, bends and vibrato can move it without a click.
 */
final class PluckedString implements Unit {
    /** Where the pickup sits, as a fraction of the string from the bridge (REFERENCE 7.2: neck pickup of a split type). */
    private static final double PICKUP = 0.18;

    private static final float INAUDIBLE = 1e-6f;
    private static final float[] NOTHING = {};

    private final SampleRate rate;
    private final float[] line;
    private final int mask;
    private int now;

    private LoopFilter filter = new LoopFilter(0, 0);
    private double filtered;
    private double delay = 2;
    private double delayStep;
    private float[] excitation = NOTHING;
    private int excited;
    private boolean silent = true;
    private int quiet;

    private int whole;
    private double c0;
    private double c1;
    private double c2;
    private double c3;
    private int tap;
    private double tapShare;

    /** @param lowest the lowest frequency that it will ever be tuned to */
    PluckedString(SampleRate rate, double lowest) {
        this.rate = rate;
        int size = Integer.highestOneBit((int) (rate.hertz() / lowest) + 8) * 2;
        this.line = new float[size];
        this.mask = size - 1;
    }

    /** Forgets all that sounds, and starts anew at this pitch with this burst. */
    void pluck(double hertz, LoopFilter newFilter, float[] burst) {
        Arrays.fill(line, 0);
        filtered = 0;
        filter = newFilter;
        excite(burst);
        delay = delayFor(hertz);
        delayStep = 0;
        aim();
    }

    /** Adds a burst to what sounds. */
    void excite(float[] burst) {
        excitation = burst;
        excited = 0;
        quiet = 0;
        silent = false;
    }

    /** What a turn loses from now on. */
    void lose(LoopFilter newFilter) {
        filter = newFilter;
    }

    /** Moves to this pitch over the next so many samples. */
    void glide(double hertz, int samples) {
        delayStep = (delayFor(hertz) - delay) / samples;
    }

    /** Keeps its pitch from now on. */
    void hold() {
        delayStep = 0;
    }

    boolean isSilent() {
        return silent;
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count && !silent; i++) {
            if (delayStep != 0) {
                delay += delayStep;
                aim();
            }
            float heard = step();
            out[i] += heard;
            quiet = Math.abs(heard) < INAUDIBLE ? quiet + 1 : 0;
            silent = quiet > 2 * whole && excited >= excitation.length;
        }
    }

    private float step() {
        int at = now - whole;
        double back =
                c0 * line[at + 1 & mask] + c1 * line[at & mask] + c2 * line[at - 1 & mask] + c3 * line[at - 2 & mask];
        filtered = filter.b() * back + filter.a() * filtered;
        float wave = (float) filtered + (excited < excitation.length ? excitation[excited++] : 0);
        line[now & mask] = wave;
        float reflection = (float) (line[now - tap & mask] * (1 - tapShare) + line[now - tap - 1 & mask] * tapShare);
        now++;
        return wave - reflection;
    }

    /** The whole turn takes one period; the filter takes its part of it. */
    private double delayFor(double hertz) {
        return Math.max(2, rate.hertz() / hertz - filter.delay(rate.radians(hertz)));
    }

    /** Lagrange weights of the four samples around the delay. */
    private void aim() {
        whole = (int) delay;
        double d = delay - whole;
        c0 = -d * (d - 1) * (d - 2) / 6;
        c1 = (d + 1) * (d - 1) * (d - 2) / 2;
        c2 = -(d + 1) * d * (d - 2) / 2;
        c3 = (d + 1) * d * (d - 1) / 6;
        double pickup = delay * PICKUP;
        tap = (int) pickup;
        tapShare = pickup - tap;
    }
}
