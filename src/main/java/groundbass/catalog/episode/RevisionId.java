package groundbass.catalog.episode;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;

/** The id of a revision. */
public record RevisionId(String value) implements TextValue {
    public RevisionId {
        IdForm.require(value);
    }

    public static RevisionId next() {
        return new RevisionId(RandomId.next());
    }

    @Override
    public String toString() {
        return value;
    }
}
