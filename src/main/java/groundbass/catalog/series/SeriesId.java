package groundbass.catalog.series;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a series of episodes. */
public record SeriesId(String value) implements TextValue {
    public SeriesId {
        IdForm.require(value);
    }

    public static SeriesId next() {
        return new SeriesId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<SeriesId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new SeriesId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
