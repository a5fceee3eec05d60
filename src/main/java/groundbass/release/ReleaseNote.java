package groundbass.release;

import java.util.ArrayDeque;
import java.util.List;
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

    /**
     * What is told of a release that takes in corrections that never went out: their sentences as well, as many of the last as
     * there is room for; by letter, where any of them was to be.
     *
     * @param before what was to be told of them, the oldest first
     */
    public ReleaseNote after(List<ReleaseNote> before) {
        var sentences = new ArrayDeque<>(List.of(text));
        int room = LONGEST - text.length();
        for (int i = before.size() - 1; i >= 0; i--) {
            String sentence = before.get(i).text();
            if (!sentence.isEmpty() && !sentences.contains(sentence) && sentence.length() < room) {
                sentences.addFirst(sentence);
                room -= sentence.length() + 1;
            }
        }
        boolean letter = byLetter || before.stream().anyMatch(ReleaseNote::byLetter);
        return new ReleaseNote(String.join(" ", sentences).strip(), letter);
    }
}
