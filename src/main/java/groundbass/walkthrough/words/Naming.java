package groundbass.walkthrough.words;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Whose names a walkthrough uses, where musicians of one language do not agree. */
public enum Naming {
    /** The language's own: quarter and eighth in English, H and B in German. */
    USUAL(""),
    /** British names of note lengths: crotchet and quaver. */
    BRITISH("en"),
    /** International note names, B and B flat, in a language that has its own. */
    INTERNATIONAL("de");

    private final String language;

    Naming(String language) {
        this.language = language;
    }

    /** Whether musicians of a language have these names beside their usual ones. */
    public boolean isSpokenIn(Locale locale) {
        return this == USUAL || locale.getLanguage().equals(language);
    }

    /** How the name is kept and sent. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Naming> parse(String word) {
        return Arrays.stream(values())
                .filter(naming -> naming.word().equals(word))
                .findFirst();
    }
}
