package groundbass.groove;

import java.util.Arrays;
import java.util.Optional;

/** What the bass is heard through. */
public enum BassTone {
    /** A light amplifier and its cabinet: small speakers and headphones let even low notes be told by it. */
    AMPLIFIER("amplifier"),

    /** Straight from the strings. */
    DIRECT("direct");

    private final String word;

    BassTone(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    public static Optional<BassTone> ofWord(String word) {
        return Arrays.stream(values()).filter(tone -> tone.word.equals(word)).findFirst();
    }
}
