package groundbass.release;

import java.util.Objects;

/**
 * What students are told of a correction.
 *
 * @param text one sentence; empty for a first release, and for one that took in what was written last by itself
 * @param byLetter whether those who hold an earlier release, and agreed to it, get a letter
 */
public record ReleaseNote(String text, boolean byLetter) {
    public static final ReleaseNote NONE = new ReleaseNote("", false);
    public static final int LONGEST = 300;

    public ReleaseNote {
        Objects.requireNonNull(text);
    }
}
