package groundbass.catalog;

import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a person who writes lessons. */
public record EducatorId(String value) {
    public EducatorId {
        RandomId.require(value);
    }

    public static EducatorId next() {
        return new EducatorId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<EducatorId> parse(String text) {
        return RandomId.isId(text) ? Optional.of(new EducatorId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
