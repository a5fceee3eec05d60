package groundbass.linetext.source;

import groundbass.score.Line;

/** How much one text may hold. They are part of the grammar and bound the time of a reading. */
public final class Limits {
    /** Characters of one line of text; the fullest bar that a line can hold prints below it. */
    public static final int LONGEST_LINE = 60_000;

    public static final int MOST_BARS = Line.MOST_BARS;
    /** Events of all count lines, rests and holds included, a line of several counts counted once for each. */
    public static final int MOST_EVENTS = 250_000;

    /** Shares that the events of one count line may ask for in all. */
    public static final int MOST_SHARES = 1_000_000;

    public static final int MOST_PROBLEMS = 100;

    private Limits() {}
}
