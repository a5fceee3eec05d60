package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.Arrays;

/** A string that swings in two {@link Plane planes} at once; that across the neck at a quarter of the samples. */
final class TwoPlanes implements Unit {
    /** Samples of the slower plane that are made at once. */
    private static final int FEW = 8;

    private static final int MANY = FEW * FourFold.TIMES;

    /** So many samples more bring what is stretched up to its time. */
    private static final int EARLY = 2;

    private final PluckedString upright;
    private final PluckedString across;
    private final FourFold stretching = new FourFold();
    private final float[] few = new float[FEW];
    private final float[] many = new float[MANY];
    private int used = MANY;

    TwoPlanes(SampleRate rate, double openHertz) {
        this.upright = new PluckedString(rate, openHertz, Plane.UPRIGHT.tuning());
        this.across = new PluckedString(FourFold.slower(rate), openHertz, Plane.ACROSS.tuning());
    }

    PluckedString upright() {
        return upright;
    }

    PluckedString across() {
        return across;
    }

    /** Both planes are let go of now. */
    void start() {
        stretching.rest();
        Arrays.fill(few, 0);
        across.render(few, 0, EARLY);
        stretching.stretch(few, EARLY, many);
        used = MANY;
    }

    /** Moves to this pitch over the next so many samples. */
    void glide(double hertz, int samples) {
        upright.glide(hertz, samples);
        across.glide(hertz, samples / FourFold.TIMES);
    }

    /** Moves to this pitch over the next so many samples, setting out and arriving gently. */
    void ease(double hertz, int samples) {
        upright.ease(hertz, samples);
        across.ease(hertz, samples / FourFold.TIMES);
    }

    /** Keeps its pitch from now on. */
    void hold() {
        upright.hold();
        across.hold();
    }

    boolean isSilent() {
        return upright.isSilent() && across.isSilent();
    }

    @Override
    public void render(float[] out, int from, int count) {
        upright.render(out, from, count);
        if (across.isSilent() && used == MANY) {
            return;
        }
        int done = 0;
        while (done < count) {
            if (used == MANY) {
                Arrays.fill(few, 0);
                across.render(few, 0, FEW);
                stretching.stretch(few, FEW, many);
                used = 0;
            }
            int step = Math.min(count - done, MANY - used);
            for (int i = 0; i < step; i++) {
                out[from + done + i] += many[used + i] * (float) Plane.ACROSS.share();
            }
            used += step;
            done += step;
        }
    }
}
