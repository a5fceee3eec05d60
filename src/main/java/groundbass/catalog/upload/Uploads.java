package groundbass.catalog.upload;

import groundbass.audio.AudioFacts;
import groundbass.audio.AudioFinding;
import groundbass.audio.AudioProbe;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.upload.SentTable.Presence;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.store.DatabaseClock;
import groundbass.store.RandomId;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Recordings that come in: streamed to the store, then judged by their content. */
public final class Uploads {
    /** The most bytes of one recording. */
    public static final long LIMIT = 100_000_000;

    /** The most bytes of all recordings of one educator: a good hundred lessons with two recordings of the largest size. */
    public static final long QUOTA = 25_000_000_000L;

    private static final String FIELD = "file";
    private static final long MEGABYTE = 1_000_000;

    private final Jdbi jdbi;
    private final Blobs blobs;
    private final Audit audit;
    private final Clock clock;
    private final long limit;
    private final long quota;
    private final Episodes episodes;
    private final UploadRepository rows;
    private final Pictures pictures;

    public Uploads(Jdbi jdbi, UploadRepository rows, Episodes episodes, Blobs blobs, Audit audit, Clock clock) {
        this(jdbi, rows, episodes, blobs, audit, clock, LIMIT, QUOTA);
    }

    Uploads(
            Jdbi jdbi,
            UploadRepository rows,
            Episodes episodes,
            Blobs blobs,
            Audit audit,
            Clock clock,
            long limit,
            long quota) {
        this.jdbi = jdbi;
        this.blobs = blobs;
        this.audit = audit;
        this.clock = clock;
        this.limit = limit;
        this.quota = quota;
        this.rows = rows;
        this.episodes = episodes;
        this.pictures = new Pictures(jdbi, rows.pictures(), episodes, blobs, audit, clock);
    }

    /** Those that were sent for notes. */
    public Pictures pictures() {
        return pictures;
    }

    /**
     * Takes a recording for an episode of this educator's. A stream longer than {@link #LIMIT}, or than what is left of
     * {@link #QUOTA}, is read no further. What
     * is refused gets no row, so that a sweep of the store clears it away after a day.
     *
     * @param originalName what the sender calls it; shown, never used
     * @throws IOException where the stream or the disk fails
     */
    public Outcome<Upload> accept(EducatorId who, EpisodeId episode, String originalName, InputStream in)
            throws IOException {
        if (episodes.open(who, Deed.WRITE, episode).isEmpty()) {
            return Outcome.refused("", "catalog.problem.gone");
        }
        long left = quota - rows.bytesOf(who);
        Optional<Blob> blob = left <= 0 ? Optional.empty() : blobs.put(in, Math.min(limit, left));
        if (blob.isEmpty() && left < limit) {
            return Outcome.refused(FIELD, "catalog.audio.quota", quota / MEGABYTE);
        }
        if (blob.isEmpty()) {
            return Outcome.refused(FIELD, "catalog.audio.too-large", limit / MEGABYTE);
        }
        AudioFinding finding = finding(blob.get());
        if (finding instanceof AudioFinding.Refused refused) {
            return Outcome.refused(List.of(new FieldProblem(FIELD, refused.key(), refused.args())));
        }
        AudioFacts facts = ((AudioFinding.Audio) finding).facts();
        return keep(who, episode, originalName, blob.get(), facts);
    }

    /**
     * Keeps and judges a recording that comes with a lesson of another server, under the id that it has there. It gets a
     * row with {@link #enter}, in the transaction of its lesson.
     *
     * @return refused where it is no recording, or where there is no room for it
     */
    public Outcome<Upload> judge(
            EducatorId who, EpisodeId episode, UploadId id, String originalName, Instant createdAt, InputStream in)
            throws IOException {
        long left = quota - rows.bytesOf(who);
        Optional<Blob> blob = left <= 0 ? Optional.empty() : blobs.put(in, Math.min(limit, left));
        if (blob.isEmpty()) {
            return Outcome.refused(FIELD, "catalog.audio.quota", quota / MEGABYTE);
        }
        return finding(blob.get()) instanceof AudioFinding.Audio audio
                ? Outcome.done(
                        new Upload(id, who, episode, ShownName.of(originalName), blob.get(), audio.facts(), createdAt))
                : Outcome.refused(FIELD, "archive.problem.no-recording");
    }

    /** Enters what was judged, in the caller's transaction. */
    public void enter(Handle handle, Upload upload) {
        rows.insert(handle, upload);
    }

    private AudioFinding finding(Blob blob) throws IOException {
        try (var file = blobs.local(blob.sha256());
                var channel = Files.newByteChannel(file.path())) {
            return AudioProbe.probe(channel);
        }
    }

    /** What took minutes to arrive may come from somebody whose access has ended since. */
    private Outcome<Upload> keep(EducatorId who, EpisodeId episode, String originalName, Blob blob, AudioFacts facts) {
        var upload = new Upload(
                new UploadId(RandomId.next()),
                who,
                episode,
                ShownName.of(originalName),
                blob,
                facts,
                DatabaseClock.of(clock));
        return jdbi.inTransaction(handle -> {
            episodes.lock(handle, episode);
            if (episodes.open(who, Deed.WRITE, episode).isEmpty()) {
                return Outcome.refused("", "catalog.problem.gone");
            }
            rows.insert(handle, upload);
            audit.append(handle, who, AuditWord.UPLOAD_CREATED, upload.id() + " for episode " + episode);
            return Outcome.done(upload);
        });
    }

    /** Empty too where it was taken out of its lesson. */
    public Optional<Upload> find(UploadId id) {
        return rows.find(id, Presence.NOW);
    }

    /** As its lesson had it at this moment, whatever was taken out since: what was made then can be made again. */
    public Optional<Upload> findAsOf(UploadId id, Instant moment) {
        return rows.find(id, Presence.at(moment));
    }

    /** Whether it was taken out of its lesson or not. */
    public Optional<Upload> findAny(UploadId id) {
        return rows.find(id, Presence.EVER);
    }

    /** Where the bytes of all of them are kept. */
    public Blobs files() {
        return blobs;
    }

    /** All of an episode, oldest first. */
    public List<Upload> of(EpisodeId episode) {
        return rows.of(episode);
    }

    /**
     * Forgets what was heard in recordings, where this file of it is gone, so that somebody listens again.
     *
     * @return whether there was such a recording
     */
    public boolean forgetHearing(Sha256 sha256) {
        return rows.forgetHeard(sha256) > 0;
    }

    /** Whether an upload's row names this content; for {@link Blobs#sweep}. */
    public boolean names(Sha256 sha256) {
        return rows.names(sha256) || pictures.names(sha256);
    }
}
