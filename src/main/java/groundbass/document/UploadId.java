package groundbass.document;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import java.util.Optional;

/** The id of an uploaded file. */
public record UploadId(String value) implements TextValue {
    public UploadId {
        IdForm.require(value);
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<UploadId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new UploadId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
