package groundbass.script;

import groundbass.script.captions.Timestamp;
import java.util.Objects;

/**
 * A stretch of a recording with a title, up to the next one.
 *
 * @param from milliseconds from the start
 * @param title one line
 */
public record Chapter(long from, String title) {
    public static final int LONGEST_TITLE = 120;

    public Chapter {
        Objects.requireNonNull(title);
        if (from < 0
                || title.isBlank()
                || title.length() > LONGEST_TITLE
                || title.lines().count() > 1) {
            throw new IllegalArgumentException("a chapter has a time and a title of one line: " + from + " " + title);
        }
    }

    /** As people write it: {@code 4:05}. */
    public String time() {
        return Timestamp.brief(from);
    }
}
