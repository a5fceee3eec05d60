package groundbass.catalog.educator;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a person who writes lessons. */
public record EducatorId(String value) implements TextValue {
    public EducatorId {
        IdForm.require(value);
    }

    public static EducatorId next() {
        return new EducatorId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<EducatorId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new EducatorId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
