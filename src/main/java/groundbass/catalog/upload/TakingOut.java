package groundbass.catalog.upload;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.document.PictureId;
import groundbass.document.UploadId;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.jdbi.v3.core.Jdbi;

/**
 * Taking recordings and pictures out of a lesson that stays. Each can be put back for a month. What another lesson uses is
 * that lesson's from then on, and what a release has used is kept for it; all else is deleted for good after that month.
 */
public final class TakingOut {
    public static final Duration KEPT = Duration.ofDays(30);

    private final Jdbi jdbi;
    private final Episodes episodes;
    private final EpisodeService writing;
    private final Audit audit;
    private final Clock clock;

    public TakingOut(Jdbi jdbi, Episodes episodes, EpisodeService writing, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.episodes = episodes;
        this.writing = writing;
        this.audit = audit;
        this.clock = clock;
    }

    /** What has become of it. */
    public enum Whither {
        /** It can be put back. */
        ASIDE,
        /** Another lesson uses it and has it now. */
        ELSEWHERE
    }

    /**
     * Takes a recording out of its lesson, and out of what is being typed there.
     *
     * @return refused where the lesson, or that recording of it, is gone
     */
    public Outcome<Whither> recording(EducatorId who, EpisodeId lesson, UploadId id) {
        return take(who, lesson, SentTable.UPLOAD, id.value(), () -> untick(who, lesson, id));
    }

    /**
     * Takes a picture out of its lesson. Notes that show it say as they did before, and are told to show nothing there.
     *
     * @return refused where the lesson, or that picture of it, is gone
     */
    public Outcome<Whither> picture(EducatorId who, EpisodeId lesson, PictureId id) {
        return take(who, lesson, SentTable.PICTURE, id.value(), () -> {});
    }

    private Outcome<Whither> take(EducatorId who, EpisodeId lesson, SentTable table, String id, Runnable change) {
        return jdbi.inTransaction(handle -> {
            episodes.lock(handle, lesson);
            if (!mayWrite(who, lesson) || !table.isIn(handle, id, lesson)) {
                return Outcome.refused("", "catalog.problem.gone");
            }
            change.run();
            boolean elsewhere = table.handOn(handle, id, lesson);
            if (!elsewhere) {
                table.takeOut(handle, id, clock.instant());
            }
            audit.append(handle, who, table.removed(), id + " of episode " + lesson);
            return Outcome.done(elsewhere ? Whither.ELSEWHERE : Whither.ASIDE);
        });
    }

    private boolean mayWrite(EducatorId who, EpisodeId lesson) {
        return episodes.open(who, Deed.WRITE, lesson).isPresent();
    }

    private void untick(EducatorId who, EpisodeId lesson, UploadId id) {
        Predicate<BackingTrack> stays = track -> !track.upload().equals(id);
        boolean isUsed = writing.draft(who, lesson)
                .filter(draft -> !draft.document().backingTracks().stream().allMatch(stays))
                .isPresent();
        if (isUsed) {
            writing.saveDraft(who, lesson, (stored, changed) -> true, before -> with(before, stays));
        }
    }

    private static EpisodeDocument with(EpisodeDocument before, Predicate<BackingTrack> stays) {
        return before.edit()
                .backingTracks(before.backingTracks().stream().filter(stays).toList())
                .done();
    }

    /** A recording that is put back is listed in its lesson, and comes with it once that is said. */
    public Outcome<EpisodeId> putBackRecording(EducatorId who, EpisodeId lesson, UploadId id) {
        return putBack(who, lesson, SentTable.UPLOAD, id.value());
    }

    public Outcome<EpisodeId> putBackPicture(EducatorId who, EpisodeId lesson, PictureId id) {
        return putBack(who, lesson, SentTable.PICTURE, id.value());
    }

    private Outcome<EpisodeId> putBack(EducatorId who, EpisodeId lesson, SentTable table, String id) {
        return jdbi.inTransaction(handle -> {
            episodes.lock(handle, lesson);
            if (mayWrite(who, lesson) && table.isIn(handle, id, lesson)) {
                return Outcome.done(lesson); // pressed twice
            }
            if (!mayWrite(who, lesson) || !table.putBack(handle, id, lesson, monthAgo())) {
                return Outcome.refused("", "catalog.problem.gone");
            }
            audit.append(handle, who, table.restored(), id + " of episode " + lesson);
            return Outcome.done(lesson);
        });
    }

    /** Recordings of a lesson that can be put back, the last first. */
    public List<TakenOut> recordings(EpisodeId lesson) {
        return jdbi.withHandle(handle -> SentTable.UPLOAD.takenOut(handle, lesson, monthAgo()));
    }

    public List<TakenOut> pictures(EpisodeId lesson) {
        return jdbi.withHandle(handle -> SentTable.PICTURE.takenOut(handle, lesson, monthAgo()));
    }

    /** Other lessons that use a recording. */
    public List<EpisodeId> alsoIn(UploadId id, EpisodeId lesson) {
        return jdbi.withHandle(handle -> SentTable.UPLOAD.others(handle, id.value(), lesson));
    }

    public List<EpisodeId> alsoIn(PictureId id, EpisodeId lesson) {
        return jdbi.withHandle(handle -> SentTable.PICTURE.others(handle, id.value(), lesson));
    }

    /**
     * Deletes for good what was taken out a month ago; idempotent.
     *
     * @param published whether a release has this content, and so wants the row as well
     */
    public void empty(Predicate<Sha256> published) {
        Instant before = monthAgo();
        for (var table : SentTable.values()) {
            jdbi.useTransaction(handle -> table.gone(handle, before).stream()
                    .filter(gone -> !published.test(gone.sha256()))
                    .forEach(gone -> {
                        table.delete(handle, gone.id());
                        audit.append(
                                handle, Audit.CALENDAR, table.purged(), gone.id() + " of episode " + gone.lesson());
                    }));
        }
    }

    private Instant monthAgo() {
        return clock.instant().minus(KEPT);
    }
}
