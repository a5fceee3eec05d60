package groundbass.store;

import groundbass.identity.Sha256;
import java.util.Objects;

/** A file that {@link Blobs} keeps: its digest and its length in bytes. */
public record Blob(Sha256 sha256, long length) {
    public Blob {
        Objects.requireNonNull(sha256);
        if (length < 0) {
            throw new IllegalArgumentException("length below zero: " + length);
        }
    }
}
