package groundbass.kill;

import groundbass.identity.Sha256;
import groundbass.store.BlobStore;
import groundbass.store.Database;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** What a site holds after its process was killed, seen as the next start sees it; close it after looking. */
final class Witness implements AutoCloseable {
    /** What would be there twice; of accounts the database itself lets no address have two. */
    private static final Map<String, String> TWICE = Map.of(
            "letters", "select recipient from outbox group by recipient having count(*) > 1",
            "sessions", "select student_id from session group by student_id having count(*) > 1");

    private final Database database;
    private final BlobStore blobs;
    private final Map<Kind, Set<String>> kept = new EnumMap<>(Kind.class);
    private final Map<String, Integer> drafts = new HashMap<>();
    private final Map<String, Sha256> uploads = new HashMap<>();

    private Witness(Database database, BlobStore blobs) {
        this.database = database;
        this.blobs = blobs;
    }

    static Witness of(Site site) {
        var database = site.open();
        var witness = new Witness(database, site.blobs(database));
        database.jdbi().useHandle(witness::read);
        return witness;
    }

    private void read(Handle handle) {
        for (Kind kind : Kind.values()) {
            kept.put(kind, kind.keys(handle));
        }
        kept.get(Kind.DRAFT).stream()
                .map(key -> new Acknowledged(Kind.DRAFT, key))
                .forEach(draft -> drafts.put(draft.episode(), draft.version()));
        handle.createQuery("select id, sha256 from upload")
                .map((row, context) -> Map.entry(
                        row.getString("id"),
                        Sha256.parse(row.getString("sha256")).orElseThrow()))
                .forEach(upload -> uploads.put(upload.getKey(), upload.getValue()));
    }

    List<Acknowledged> lost(List<Acknowledged> acknowledged) {
        return acknowledged.stream().filter(one -> !isKept(one)).toList();
    }

    private boolean isKept(Acknowledged one) {
        return switch (one.kind()) {
            case DRAFT -> drafts.getOrDefault(one.episode(), 0) >= one.version();
            case UPLOAD -> uploads.containsKey(one.key()) && isWhole(uploads.get(one.key()));
            default -> kept.get(one.kind()).contains(one.key());
        };
    }

    /** What was done twice, or shows half of a file: also of what nobody was told. */
    List<String> halfDone() {
        var found = new ArrayList<String>();
        uploads.forEach((id, sha256) -> {
            if (!isWhole(sha256)) found.add("upload " + id + " without its file");
        });
        database.jdbi()
                .useHandle(handle -> TWICE.forEach((what, query) -> handle.createQuery(query)
                        .mapTo(String.class)
                        .forEach(one -> found.add(what + " of " + one + " twice"))));
        try {
            blobs.forEach(sha256 -> {
                if (!isWhole(sha256)) found.add("half a file, " + sha256);
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    /** Reads it through, as the store gives it. */
    private boolean isWhole(Sha256 sha256) {
        try (InputStream in = blobs.open(sha256)) {
            return Sha256.of(in.readAllBytes()).equals(sha256);
        } catch (NoSuchFileException e) {
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        blobs.close();
        database.close();
    }
}
