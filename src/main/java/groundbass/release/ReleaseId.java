package groundbass.release;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a release; it stands in the address of each of its files. */
public record ReleaseId(String value) implements TextValue {
    public ReleaseId {
        IdForm.require(value);
    }

    public static ReleaseId next() {
        return new ReleaseId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<ReleaseId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new ReleaseId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
