package groundbass.script.captions;

/**
 * What is said in a stretch of a recording.
 *
 * @param from milliseconds from the start
 * @param to milliseconds from the start, after {@code from}
 * @param text plain, its lines joined by spaces
 */
public record Cue(long from, long to, String text) {
    public Cue {
        if (from < 0 || from >= to) {
            throw new IllegalArgumentException("a cue runs forward: " + from + " to " + to);
        }
    }
}
