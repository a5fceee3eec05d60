package groundbass.score;

/** So many beats a minute, and which length is counted as the beat (rule: tempo-counts-beats). */
public record Tempo(int perMinute, Fraction beat) {
    public static final int SLOWEST = 20;
    public static final int FASTEST = 400;
    private static final int SHORTEST_BEAT = 64;

    public Tempo {
        if (perMinute < SLOWEST || perMinute > FASTEST) {
            throw new IllegalArgumentException(
                    "tempo must be " + SLOWEST + " to " + FASTEST + " a minute: " + perMinute);
        }
        if (!isBeat(beat)) {
            throw new IllegalArgumentException("no length that a tempo counts: " + beat);
        }
    }

    /** Whether a tempo may count this length: up to a bar of the longest meter, in 64ths or longer steps. */
    public static boolean isBeat(Fraction length) {
        return length.isPositive()
                && SHORTEST_BEAT % length.denominator() == 0
                && !length.isAfter(Fraction.of(Meter.MOST_COUNTS));
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
