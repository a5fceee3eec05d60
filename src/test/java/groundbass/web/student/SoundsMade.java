package groundbass.web.student;

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
 * that need a lesson with sound are not about how it is made.
 */
final class SoundsMade {
    private static final Pattern DIGEST = Pattern.compile("(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])");
    private static final Map<String, String> ROWS = new HashMap<>();
    private static final Map<String, byte[]> FILES = new HashMap<>();

    private record Row(String recipe, String made) {}

    private SoundsMade() {}

    /** Before a lesson is built. */
    static synchronized void lay(Jdbi jdbi, Blobs blobs, Instant now) throws IOException {
        for (byte[] file : FILES.values()) {
            blobs.put(file);
        }
        ROWS.forEach((recipe, made) -> jdbi.useHandle(handle ->
                handle.execute("insert into made_audio (recipe, made, made_at) values (?, ?, ?)", recipe, made, now)));
    }

    /** After it was built. */
    static synchronized void keep(Jdbi jdbi, Blobs blobs) {
        List<Row> rows = jdbi.withHandle(handle -> handle.createQuery("select recipe, made from made_audio")
                .mapTo(Row.class)
                .list());
        for (var row : rows) {
            ROWS.put(row.recipe(), row.made());
            DIGEST.matcher(row.made()).results().forEach(digest -> keep(digest.group(), blobs));
        }
    }

    private static void keep(String digest, Blobs blobs) {
        FILES.computeIfAbsent(digest, any -> {
            try (var in = blobs.open(new Sha256(digest))) {
                return in.readAllBytes();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }
}
