package groundbass.catalog.upload;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.upload.SentTable.Presence;
import groundbass.document.PictureId;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.store.DatabaseClock;
import groundbass.store.RandomId;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Pictures for notes: judged by their content, made anew and kept. */
public final class Pictures {
    /** The most bytes of what is sent; a photograph of a telephone has a third of it. */
    public static final int LIMIT = 15_000_000;

    /** Of one lesson. */
    public static final int MOST = 60;

    /** Characters of the words that stand for one. */
    public static final int LONGEST_WORDS = 500;

    private static final String FIELD = "picture";
    private static final int MEGABYTE = 1_000_000;
    /** No picture that was made here has as many bytes: that of three noisy colours at the largest size has fewer. */
    private static final int LARGEST_MADE = 8 * MEGABYTE;

    private final Jdbi jdbi;
    private final PictureRows rows;
    private final Episodes episodes;
    private final Blobs blobs;
    private final Audit audit;
    private final Clock clock;

    Pictures(Jdbi jdbi, PictureRows rows, Episodes episodes, Blobs blobs, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.rows = rows;
        this.episodes = episodes;
        this.blobs = blobs;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Takes a picture for the notes of an episode of this educator's.
     *
     * @param originalName what the sender calls it; shown, never used
     * @param words that stand for it where it is not seen; a picture without is refused
     * @param sent the file; one of more than {@link #LIMIT} bytes is refused, so nobody need read any further
     * @throws IOException where the disk fails
     */
    public Outcome<Picture> accept(EducatorId who, EpisodeId episode, String originalName, String words, byte[] sent)
            throws IOException {
        if (episodes.open(who, Deed.WRITE, episode).isEmpty()) {
            return Outcome.refused("", "catalog.problem.gone");
        }
        if (words.isBlank()) {
            return Outcome.refused("words", "catalog.picture.words");
        }
        if (words.strip().length() > LONGEST_WORDS) {
            return Outcome.refused(
                    "words", "catalog.problem.long", words.strip().length(), LONGEST_WORDS);
        }
        if (sent.length > LIMIT) {
            return Outcome.refused(FIELD, "catalog.picture.too-large", LIMIT / MEGABYTE);
        }
        var made = PictureContent.of(sent);
        return made.result().isPresent()
                ? keep(
                        who,
                        episode,
                        ShownName.of(originalName),
                        words.strip(),
                        made.result().get())
                : Outcome.refused(made.problems());
    }

    private Outcome<Picture> keep(EducatorId who, EpisodeId episode, String name, String words, PictureContent content)
            throws IOException {
        var picture = new Picture(
                new PictureId(RandomId.next()),
                who,
                episode,
                name,
                words,
                content.format(),
                content.width(),
                content.height(),
                blobs.put(content.bytes()),
                DatabaseClock.of(clock));
        return jdbi.inTransaction(handle -> {
            episodes.lock(handle, episode);
            if (episodes.open(who, Deed.WRITE, episode).isEmpty()) {
                return Outcome.refused("", "catalog.problem.gone");
            }
            if (rows.of(episode).size() >= MOST) {
                return Outcome.refused(FIELD, "catalog.picture.most", MOST);
            }
            rows.insert(handle, picture);
            audit.append(handle, who, AuditWord.PICTURE_CREATED, picture.id() + " for episode " + episode);
            return Outcome.done(picture);
        });
    }

    /**
     * Keeps and judges a picture that comes with a lesson of another server, under the id that it has there; what was not
     * made by a program of ours is refused. It gets a row with {@link #enter}, in the transaction of its lesson.
     */
    public Outcome<Picture> judge(Picture told, InputStream in) throws IOException {
        byte[] sent = in.readNBytes(LARGEST_MADE + 1);
        if (sent.length > LARGEST_MADE || !PictureContent.isMade(sent, told.format())) {
            return Outcome.refused(FIELD, "archive.problem.no-picture");
        }
        Blob blob = blobs.put(sent);
        return Outcome.done(new Picture(
                told.id(),
                told.by(),
                told.episode(),
                ShownName.of(told.originalName()),
                told.words(),
                told.format(),
                told.wide(),
                told.high(),
                blob,
                told.createdAt()));
    }

    /** Whether words may stand for a picture. */
    public static boolean isSound(String words) {
        return words != null && !words.isBlank() && words.strip().length() <= LONGEST_WORDS;
    }

    /** Enters what was judged, in the caller's transaction. */
    public void enter(Handle handle, Picture picture) {
        rows.insert(handle, picture);
    }

    /** Empty too where it was taken out of its lesson. */
    public Optional<Picture> find(PictureId id) {
        return rows.find(id, Presence.NOW);
    }

    /** As its lesson had it at this moment, whatever was taken out since: what was made then can be made again. */
    public Optional<Picture> findAsOf(PictureId id, Instant moment) {
        return rows.find(id, Presence.at(moment));
    }

    /** Whether it was taken out of its lesson or not. */
    public Optional<Picture> findAny(PictureId id) {
        return rows.find(id, Presence.EVER);
    }

    /** All that were sent for an episode, oldest first. */
    public List<Picture> of(EpisodeId episode) {
        return rows.of(episode);
    }

    boolean names(Sha256 sha256) {
        return rows.names(sha256);
    }
}
