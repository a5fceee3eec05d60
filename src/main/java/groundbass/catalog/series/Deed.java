package groundbass.catalog.series;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What somebody may do with a series; {@link SeriesPart} says who may do what. */
public enum Deed {
    /** See how often its lessons were opened, played and taken. */
    READ_FIGURES,
    /** Do with its lessons whatever can be done with lessons, and choose how all of them are kept. */
    WRITE,
    /** See by their addresses who took something. */
    SEE_TAKERS,
    /** Rename it, share it, hand it over, take it along. */
    KEEP;

    private static final String OWN = "select own.id from series own where own.educator_id = :who";
    private static final String SHARED = " union select shared.series_id from series_colleague shared"
            + " where shared.educator_id = :who and shared.part in (";

    /**
     * The ids of the series with which an educator may do this, as a part of a query in brackets. {@code :who} is bound to
     * the educator.
     */
    public String series() {
        var parts = Stream.of(SeriesPart.values())
                .filter(part -> part != SeriesPart.OWNER && part.may(this))
                .map(part -> "'" + part.value() + "'")
                .toList();
        return "(" + OWN + shared(parts) + ") ";
    }

    private static String shared(List<String> parts) {
        return parts.isEmpty() ? "" : parts.stream().collect(Collectors.joining(", ", SHARED, ")"));
    }
}
