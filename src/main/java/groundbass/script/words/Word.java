package groundbass.script.words;

import java.util.Locale;

/**
 * One word, number or punctuation mark of a script.
 *
 * @param raw as it stands
 * @param from offset of its first character
 */
public record Word(String raw, int from) {
    /** In small letters, with plain apostrophes and signs, as the word lists have it. */
    public String folded() {
        return raw.toLowerCase(Locale.ROOT).replace('’', '\'').replace('♯', '#').replace('♭', 'b');
    }

    public int to() {
        return from + raw.length();
    }
}
