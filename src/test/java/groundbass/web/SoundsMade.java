package groundbass.web;

import groundbass.identity.Sha256;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jdbi.v3.core.Jdbi;

/**
 * Sound that an earlier test of this process had made, laid into the next site as if it had been made there: most tests
 * that need a lesson with sound are not about how it is made. No more is kept than can be laid in a moment. Thread-safe.
 */
public final class SoundsMade {
    private static final Pattern DIGEST = Pattern.compile("(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])");

    private final Map<String, String> rows = new HashMap<>();
    private final Map<String, byte[]> files = new HashMap<>();
    private final long most;
    private long size;

    private record Row(String recipe, String made) {}

    /** @param most bytes, about */
    public SoundsMade(long most) {
        this.most = most;
    }

    /** Before a lesson is built. */
    public synchronized void lay(Jdbi jdbi, Blobs blobs, Instant now) {
        try {
            for (byte[] file : files.values()) {
                blobs.put(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        rows.forEach((recipe, made) -> jdbi.useHandle(handle ->
                handle.execute("insert into made_audio (recipe, made, made_at) values (?, ?, ?)", recipe, made, now)));
    }

    /** After it was built. */
    public synchronized void keep(Jdbi jdbi, Blobs blobs) {
        List<Row> found = jdbi.withHandle(handle -> handle.createQuery("select recipe, made from made_audio")
                .mapTo(Row.class)
                .list());
        for (var row : found) {
            if (size < most) {
                keep(row, blobs);
            }
        }
    }

    private void keep(Row row, Blobs blobs) {
        try {
            for (var digest : DIGEST.matcher(row.made()).results().toList()) {
                keep(digest.group(), blobs);
            }
            rows.put(row.recipe(), row.made());
        } catch (IOException e) {
            // a test has harmed the file: the sound is made anew
        }
    }

    private void keep(String digest, Blobs blobs) throws IOException {
        if (!files.containsKey(digest)) {
            try (var in = blobs.open(new Sha256(digest))) {
                byte[] file = in.readAllBytes();
                size += file.length;
                files.put(digest, file);
            }
        }
    }
}
