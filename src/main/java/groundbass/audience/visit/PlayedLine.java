package groundbass.audience.visit;

import java.util.Objects;
import java.util.Set;

/**
 * How much of one line was played, as a browser tells it.
 *
 * @param line its name in the lesson: {@code line}, {@code exercise-1}
 * @param quarters of its bars that sounded to their end: 0 where it was less than one quarter, 4 where it was all
 * @param looped the bars of passages that were played to their end and begun again, as the sheet numbers them
 */
public record PlayedLine(String line, int quarters, Set<Integer> looped) {
    /** How many quarters are all of a line. */
    public static final int ALL = 4;

    /** The name of the line that a lesson is about. */
    public static final String MAIN = "line";

    private static final int LONGEST_NAME = 20;

    public PlayedLine {
        Objects.requireNonNull(line);
        if (line.isEmpty() || line.length() > LONGEST_NAME) throw new IllegalArgumentException("not a line: " + line);
        if (quarters < 0 || quarters > ALL) throw new IllegalArgumentException("not quarters of a line: " + quarters);
        looped = Set.copyOf(looped);
    }
}
