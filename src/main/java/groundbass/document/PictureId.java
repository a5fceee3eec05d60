package groundbass.document;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import java.util.Optional;

/** The id of a picture that was sent for notes. */
public record PictureId(String value) implements TextValue {
    public PictureId {
        IdForm.require(value);
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<PictureId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new PictureId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
