package groundbass.signal;

/** A sound from one frame on. */
public final class OffsetSound implements Sound {
    private static final int BLOCK = 4_096;

    private final Sound whole;
    private final long skipped;
    private boolean begun;

    /** @param skipped frames that are left out at the beginning */
    public OffsetSound(Sound whole, long skipped) {
        if (skipped < 0 || skipped > whole.frames()) {
            throw new IllegalArgumentException("no such frame: " + skipped);
        }
        this.whole = whole;
        this.skipped = skipped;
    }

    @Override
    public SampleRate rate() {
        return whole.rate();
    }

    @Override
    public int channels() {
        return whole.channels();
    }

    @Override
    public long frames() {
        return whole.frames() - skipped;
    }

    @Override
    public int read(float[][] channels) {
        if (!begun) {
            skip();
            begun = true;
        }
        return whole.read(channels);
    }

    private void skip() {
        long left = skipped;
        while (left > 0) {
            left -= whole.read(new float[whole.channels()][(int) Math.min(BLOCK, left)]);
        }
    }
}
