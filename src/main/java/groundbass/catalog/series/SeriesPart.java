package groundbass.catalog.series;

import groundbass.identity.TextValue;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What an educator is to a series, and so what they may do with it. Who is nothing to it does not see that it is there. */
public enum SeriesPart implements TextValue {
    /** Answers for it; there is one, who stands with the series. */
    OWNER("owner", EnumSet.allOf(Deed.class)),
    /** Writes and publishes its lessons. */
    EDITOR("editor", EnumSet.of(Deed.READ_FIGURES, Deed.WRITE)),
    /** Reads its figures, and neither drafts nor scripts nor anybody's address. */
    READER_OF_FIGURES("figures", EnumSet.of(Deed.READ_FIGURES));

    /** What can be had by being invited to work on a series beside its owner. */
    public static final List<SeriesPart> SHARED = List.of(EDITOR, READER_OF_FIGURES);

    private final String word;
    private final Set<Deed> deeds;

    SeriesPart(String word, Set<Deed> deeds) {
        this.word = word;
        this.deeds = deeds;
    }

    public boolean may(Deed deed) {
        return deeds.contains(deed);
    }

    public boolean isOwner() {
        return this == OWNER;
    }

    @Override
    public String value() {
        return word;
    }

    /** Its name in the message bundles. */
    public String key() {
        return "people.part." + word;
    }

    public static Optional<SeriesPart> parse(String word) {
        return Stream.of(values()).filter(part -> part.word.equals(word)).findFirst();
    }
}
