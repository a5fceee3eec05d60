package groundbass.linetext.source;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The first words that a line of text may have, and where it may stand. */
public enum Keyword {
    FORM(Reach.HEAD),
    TITLE(Reach.HEAD),
    COMPOSER(Reach.HEAD),
    RIGHTS(Reach.HEAD),
    KEY(Reach.ANYWHERE),
    METER(Reach.ANYWHERE),
    TEMPO(Reach.ANYWHERE),
    FEEL(Reach.ANYWHERE),
    STRINGS(Reach.HEAD),
    FRETS(Reach.HEAD),
    STYLE(Reach.ANYWHERE),
    SECTION(Reach.BAR),
    SLOWING(Reach.BAR),
    REPEAT(Reach.BAR),
    ENDING(Reach.BAR),
    SEGNO(Reach.BAR),
    CODA(Reach.BAR),
    TO(Reach.BAR),
    FINE(Reach.BAR),
    DA(Reach.BAR),
    DAL(Reach.BAR),
    NEW(Reach.BAR),
    BAR(Reach.BAR);

    /** Where a line that begins with the word may stand. */
    public enum Reach {
        /** Only before the first bar. */
        HEAD,
        /** Before the first bar for the whole line, before a later one from there on. */
        ANYWHERE,
        /** At a bar. */
        BAR
    }

    public static final List<String> WORDS =
            Arrays.stream(values()).map(Keyword::toString).toList();

    private final Reach reach;

    Keyword(Reach reach) {
        this.reach = reach;
    }

    public Reach reach() {
        return reach;
    }

    public static Optional<Keyword> of(String word) {
        return Arrays.stream(values())
                .filter(keyword -> keyword.toString().equals(word))
                .findFirst();
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
