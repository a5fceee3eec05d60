package groundbass.catalog;

import groundbass.store.RandomId;
import java.util.Optional;

/** The id of an uploaded file. */
public record UploadId(String value) {
    public UploadId {
        RandomId.require(value);
    }

    public static UploadId next() {
        return new UploadId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<UploadId> parse(String text) {
        return RandomId.isId(text) ? Optional.of(new UploadId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
