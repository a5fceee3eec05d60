package groundbass.score;

/** So many beats a minute, and which length is counted as the beat. */
public record Tempo(int perMinute, Fraction beat) {
    public static final int SLOWEST = 20;
    public static final int FASTEST = 400;

    public Tempo {
        if (perMinute < SLOWEST || perMinute > FASTEST) {
            throw new IllegalArgumentException(
                    "tempo must be " + SLOWEST + " to " + FASTEST + " a minute: " + perMinute);
        }
        if (!beat.isPositive()) {
            throw new IllegalArgumentException("beat must be positive: " + beat);
        }
    }

    /** Quarter notes a minute, as MIDI and MusicXML count. */
    public Fraction quartersPerMinute() {
        return beat.times(4L * perMinute);
    }

    /** How long a stretch of time lasts at this tempo. */
    public double seconds(Fraction time) {
        return time.dividedBy(beat).times(60).toDouble() / perMinute;
    }
}
