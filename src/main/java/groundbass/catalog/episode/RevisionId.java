package groundbass.catalog.episode;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a revision. */
public record RevisionId(String value) implements TextValue {
    public RevisionId {
        IdForm.require(value);
    }

    public static RevisionId next() {
        return new RevisionId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<RevisionId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new RevisionId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
