package groundbass.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.store.fault.UniqueViolation;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Remembers which kept files hold audio that was made already, under all that it depends on, so that a correction of a
 * word or a tempo renders and encodes only what is new. What is remembered keeps no file from being swept: it counts
 * only while a release names the files, or while they are too young to be swept, and only while they are whole.
 */
public final class MadeAudio {
    private static final Logger log = LoggerFactory.getLogger(MadeAudio.class);
    /** Stored files live at least a day without a name; what is built from them meanwhile must be named in time. */
    private static final Duration YOUNG = Duration.ofHours(20);

    private static final Duration REMEMBERED = Duration.ofDays(90);

    private static final ObjectMapper JSON = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final Jdbi jdbi;
    private final Releases releases;
    private final Blobs blobs;
    private final Clock clock;

    private record Row(String made, Instant madeAt) {}

    public MadeAudio(Jdbi jdbi, Releases releases, Blobs blobs, Clock clock) {
        this.jdbi = jdbi;
        this.releases = releases;
        this.blobs = blobs;
        this.clock = clock;
    }

    /** A short name for everything that something depends on. */
    static Sha256 key(String... parts) {
        return Sha256.of(String.join("\u0000", parts).getBytes(StandardCharsets.UTF_8));
    }

    /** @param files the files that it needs */
    <T> Optional<T> find(Sha256 key, Class<T> type, Function<T, Collection<Blob>> files) {
        return row(key).flatMap(row -> {
            boolean young = row.madeAt().isAfter(clock.instant().minus(YOUNG));
            return read(row.made(), type).filter(made -> areKept(files.apply(made), young));
        });
    }

    private boolean areKept(Collection<Blob> files, boolean young) {
        return files.stream().allMatch(blob -> blob.length() == 0 || isKept(blob, young));
    }

    /** What makes it, where nothing that was made before can be had. */
    interface Making<T> {
        T make() throws IOException;
    }

    /** What was made before, else what is made now, which is remembered. @param files the files that it needs */
    <T> T findOrKeep(Sha256 key, Class<T> type, Function<T, Collection<Blob>> files, Making<T> making)
            throws IOException {
        var before = find(key, type, files);
        if (before.isPresent()) {
            return before.get();
        }
        T made = making.make();
        keep(key, made);
        return made;
    }

    private boolean isKept(Blob blob, boolean young) {
        try {
            return (young || releases.files().names(blob.sha256())) && blobs.exists(blob.sha256());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Optional<Row> row(Sha256 key) {
        return jdbi.withHandle(handle -> handle.createQuery("select made, made_at from made_audio where recipe = :key")
                .bind("key", key)
                .mapTo(Row.class)
                .findOne());
    }

    /** Two builds may make the same at once; then the row of the one that was first stands for both. */
    void keep(Sha256 key, Object made) {
        try {
            replace(key, write(made));
        } catch (UnableToExecuteStatementException e) {
            if (!UniqueViolation.is(e)) throw e;
        }
    }

    private void replace(Sha256 key, String made) {
        jdbi.useTransaction(handle -> {
            handle.createUpdate("delete from made_audio where recipe = :key")
                    .bind("key", key)
                    .execute();
            handle.createUpdate("insert into made_audio (recipe, made, made_at) values (:key, :made, :now)")
                    .bind("key", key)
                    .bind("made", made)
                    .bind("now", clock.instant())
                    .execute();
        });
    }

    /** Deletes what was made so long ago that hardly anything is corrected any more; it can be made again. */
    public void forgetOld() {
        jdbi.useHandle(handle -> handle.createUpdate("delete from made_audio where made_at < :before")
                .bind("before", clock.instant().minus(REMEMBERED))
                .execute());
    }

    private static String write(Object made) {
        try {
            return JSON.writeValueAsString(made);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }

    /** Empty where another version wrote it in a form of its own: then it is made anew. */
    private static <T> Optional<T> read(String text, Class<T> type) {
        try {
            return Optional.of(JSON.readValue(text, type));
        } catch (JsonProcessingException e) {
            log.info("what was made of audio is made again, since it is written in another form: {}", e.getMessage());
            return Optional.empty();
        }
    }
}
