package groundbass.audience.colleague;

import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import java.util.Objects;
import java.util.Optional;

/** What somebody is invited to. */
public sealed interface Offer {
    /** A part in a series; {@link SeriesPart#OWNER} hands it over. */
    record InSeries(SeriesId series, SeriesPart part) implements Offer {
        public InSeries {
            Objects.requireNonNull(series);
            Objects.requireNonNull(part);
        }
    }

    /** A desk of their own, to begin series at. */
    record OwnDesk() implements Offer {}

    /** To keep the site. */
    record TheSite() implements Offer {}

    /** As its row has it. */
    default String word() {
        if (this instanceof InSeries part) {
            return part.part().value();
        }
        return this instanceof OwnDesk ? "desk" : "site";
    }

    default Optional<SeriesId> ofSeries() {
        return this instanceof InSeries part ? Optional.of(part.series()) : Optional.empty();
    }

    /** Whether it gives something of its owner's away, which only somebody with a desk can take. */
    default boolean handsOver() {
        return this instanceof TheSite || this instanceof InSeries part && part.part() == SeriesPart.OWNER;
    }

    /** What it is, in the message bundles; with the title of its series, if it has one. */
    default String key() {
        return "people.offer." + word();
    }

    /** Reads a row. */
    static Offer of(String word, Optional<SeriesId> series) {
        if (series.isPresent()) {
            return new InSeries(series.get(), SeriesPart.parse(word).orElseThrow());
        }
        return word.equals("desk") ? new OwnDesk() : new TheSite();
    }
}
