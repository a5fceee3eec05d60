package groundbass.signal;

/** Samples a second. */
public record SampleRate(int hertz) {
    /** That of the compact disc and of most practice files. */
    public static final SampleRate CD = new SampleRate(44_100);

    public SampleRate {
        if (hertz < 8_000 || hertz > 192_000) {
            throw new IllegalArgumentException("sample rate out of range: " + hertz);
        }
    }

    /** The nearest sample to a moment. */
    public long at(double seconds) {
        return Math.round(seconds * hertz);
    }

    /** The angle by which a sine of {@code frequency} hertz turns from sample to sample. */
    public double radians(double frequency) {
        return 2 * Math.PI * frequency / hertz;
    }

    /** The factor per sample that falls by 60 dB in {@code seconds}. */
    public double decay(double seconds) {
        return StrictMath.pow(10, -3 / (seconds * hertz));
    }
}
