package groundbass.archive.file;

import com.fasterxml.jackson.annotation.JsonProperty;
import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/**
 * A file of an archive and what it was when it was written.
 *
 * @param name in the list of a lesson within the lesson's folder, else within the archive
 * @param size in bytes, not below 0: sizes are added up, and one that takes away would make room for any other
 */
public record Entry(
        String name, long size, @JsonProperty("sha256") String sha256) {
    public Entry {
        Objects.requireNonNull(name);
        Objects.requireNonNull(sha256);
        if (size < 0) {
            throw new IllegalArgumentException("no file has a size of " + size);
        }
    }

    public static Entry of(String name, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return new Entry(name, bytes.length, Sha256.of(bytes).hex());
    }

    public static Entry of(String name, Sha256 sha256, long size) {
        return new Entry(name, size, sha256.hex());
    }
}
