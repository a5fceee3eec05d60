package groundbass.groove;

import java.util.Arrays;
import java.util.Optional;

/** What the chords are played on. */
public enum ChordTone {
    KEYS("keys"),
    GUITAR("guitar");

    private final String word;

    ChordTone(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    public static Optional<ChordTone> ofWord(String word) {
        return Arrays.stream(values()).filter(tone -> tone.word.equals(word)).findFirst();
    }
}
