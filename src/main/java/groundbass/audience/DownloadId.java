package groundbass.audience;

import groundbass.store.RandomId;
import java.util.Optional;

/** The id of one download record. */
public record DownloadId(String value) {
    public DownloadId {
        RandomId.require(value);
    }

    public static DownloadId next() {
        return new DownloadId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<DownloadId> parse(String text) {
        return RandomId.isId(text) ? Optional.of(new DownloadId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
