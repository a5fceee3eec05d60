package groundbass.backup;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;

/**
 * What a backup says of itself, in {@code manifest.json}.
 *
 * @param form of the file; {@link #FORM} is what this program writes
 * @param migration the last one of the database that it was made of
 * @param made when, as RFC 3339
 * @param tables in the order in which they can be filled
 * @param files how many stored files are in it
 * @param bytes how long these are together
 * @param missing digests of files that rows name and that were gone or damaged already
 */
public record BackupManifest(
        int form, String migration, String made, List<Rows> tables, long files, long bytes, List<String> missing) {
    static final int FORM = 1;

    private static final ObjectMapper JSON = new ObjectMapper()
            .enable(SerializationFeature.INDENT_OUTPUT)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

    public BackupManifest {
        tables = List.copyOf(tables);
        missing = List.copyOf(missing);
    }

    /** The rows of a table, with the digest of their text. */
    public record Rows(
            String table, long rows, @JsonProperty("sha256") String sha256) {}

    /** When the backup was made. */
    public Instant instant() {
        return Instant.parse(made);
    }

    /** How many rows there are in all. */
    public long rows() {
        return tables.stream().mapToLong(Rows::rows).sum();
    }

    void writeTo(OutputStream out) throws IOException {
        out.write(JSON.writeValueAsBytes(this));
    }

    static BackupManifest read(InputStream in) throws IOException {
        return JSON.readValue(in, BackupManifest.class);
    }
}
