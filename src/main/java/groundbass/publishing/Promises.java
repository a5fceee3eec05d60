package groundbass.publishing;

import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.EpisodeDocument;
import groundbass.publishing.preflight.Around;
import groundbass.publishing.preflight.Judgements;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.publishing.preflight.Preflight;
import groundbass.release.Release;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/**
 * Takes what is written after a promise into it. Whatever was saved before the hour goes out if nothing keeps it from it:
 * a draft that has been left alone for a while is fixed and built beside what was built before, and at the hour itself the
 * last one. Where that is not built in time, what was built before goes out at the hour, and the later state follows as a
 * correction as soon as it can. Where the draft may not go out, the last state that may does; a state that was fixed by an
 * older program, and that this one finds unplayable, is not brought out in the place of a later one.
 */
final class Promises {
    /** So long before the hour a draft need be left alone only for {@link #QUIET_NEAR}. */
    static final Duration LEAD = Duration.ofMinutes(30);

    static final Duration QUIET = Duration.ofMinutes(10);
    static final Duration QUIET_NEAR = Duration.ofMinutes(1);

    private final PublishingParts parts;
    private final Judgements judgements = new Judgements();

    Promises(PublishingParts parts) {
        this.parts = parts;
    }

    /**
     * How a promised lesson stands.
     *
     * @param wanted the release that shows its latest fixed state
     * @param showable what would go out if the hour came now; empty where nothing is built that may, as a newer program may
     *     find what an older one let pass (not asked long before the hour)
     * @param draft what was written since; empty where that is nothing, or where the promise does not take it
     * @param holding what keeps that draft from going out; not asked while it is still being written long before the hour
     * @param keptBack what keeps the lesson as a whole back, whatever is built; not asked long before the hour
     */
    record Stand(
            Release wanted,
            Optional<Release> showable,
            Optional<Draft> draft,
            List<LessonRemark> holding,
            List<LessonRemark> keptBack) {}

    /** Forgets what was found in lessons that are not among these. */
    void keepOnly(List<Episode> promised) {
        judgements.keepOnly(promised.stream().map(Episode::id).collect(Collectors.toSet()));
    }

    /** How an episode stands that was read just now. */
    Optional<Stand> stand(Episode episode, EpisodeState.Scheduled promise) {
        return stand(parts.look().at(episode), promise);
    }

    /** Empty where nothing was ever fixed for it. */
    Optional<Stand> stand(LessonLook look, EpisodeState.Scheduled promise) {
        return look.latest().map(wanted -> stand(look, promise, wanted));
    }

    private Stand stand(LessonLook look, EpisodeState.Scheduled promise, Release wanted) {
        var fixed = look.shownBy(wanted).document();
        var written = look.draft();
        var draft = written.filter(one -> !promise.isAtOnce() && !one.document().equals(fixed));
        boolean near = !promise.at().minus(LEAD).isAfter(parts.clock.instant());
        boolean asked = near || draft.filter(one -> isSettled(one, promise)).isPresent();
        var holding = draft.filter(one -> asked).map(one -> holding(look, one)).orElseGet(List::of);
        var latest = written.map(Draft::document).orElse(fixed);
        var day = promise.local().toLocalDate();
        List<LessonRemark> kept = near ? keptBack(look, wanted, latest, day) : List.of();
        var showable = built(promise, wanted, look.releases())
                .filter(release -> !near || blocking(look, release).isEmpty())
                .findFirst();
        return new Stand(wanted, showable, draft, holding, kept);
    }

    /** What is built of a promise, the newest first. */
    private static Stream<Release> built(EpisodeState.Scheduled promise, Release wanted, List<Release> all) {
        return all.stream()
                .filter(release -> release.spec().release() >= promise.firstRelease())
                .filter(release -> release.isReady() && release.spec().isAtPlaceOf(wanted.spec()));
    }

    /** Rights may be unsettled again after the promise; and a newer program may know better what no hand can play. */
    private List<LessonRemark> keptBack(LessonLook look, Release wanted, EpisodeDocument latest, LocalDate day) {
        var kept = new ArrayList<LessonRemark>();
        kept.addAll(Preflight.clearance(latest.rights()));
        Preflight.ended(latest.rights(), day).ifPresent(kept::add);
        blocking(look, wanted).stream().filter(remark -> !kept.contains(remark)).forEach(kept::add);
        Preflight.imprint(look.site().imprint()).ifPresent(kept::add);
        return kept;
    }

    /** What this program finds in the state that a release shows and that may not go out, whatever let it pass when it was fixed. */
    private List<LessonRemark> blocking(LessonLook look, Release release) {
        var state = look.shownBy(release);
        return judged(look, Optional.of(state.id()), state.document()).stream()
                .filter(LessonRemark::blocks)
                .toList();
    }

    /** What keeps this draft from going out; that includes that nobody can say, for then what was built before goes out. */
    private List<LessonRemark> holding(LessonLook look, Draft draft) {
        return AcceptedRemarks.holding(look.accepted(), judged(look, Optional.empty(), draft.document()));
    }

    /** What nobody can say of a state keeps it back: it is told to its educator, who can take the hour back. */
    private List<LessonRemark> judged(LessonLook look, Optional<RevisionId> fixed, EpisodeDocument document) {
        return Judging.of(look.episode().id(), () -> remarks(look, fixed, document), List.of(Preflight.unjudged()));
    }

    private List<LessonRemark> remarks(LessonLook look, Optional<RevisionId> fixed, EpisodeDocument document) {
        var id = look.episode().id();
        var addresses = look.site().addresses();
        var missing = parts.missing(document);
        return judgements.of(id, fixed, document, addresses.site(), missing, () -> new Preflight(addresses)
                .look(id, document, Around.without(missing))
                .remarks());
    }

    /** Fixes what is to go out as things stand now: a new release waits to be built, where there is none like it. */
    void freshen(Episode episode, EpisodeState.Scheduled promise, Stand stand) {
        var taken = stand.draft().filter(draft -> stand.holding().isEmpty() && isSettled(draft, promise));
        parts.jdbi.useTransaction(handle -> parts.episodes
                .lock(handle, episode.id())
                .filter(now -> now.state().equals(promise)) // neither taken back nor kept in the meantime
                .ifPresent(now -> {
                    var revision = taken.flatMap(draft -> revision(handle, now, draft))
                            .orElseGet(() -> revision(stand.wanted()));
                    parts.freezing.release(handle, now, revision);
                }));
    }

    private Optional<Revision> revision(Handle handle, Episode episode, Draft draft) {
        return parts.desk
                .fix(handle, draft.educator(), episode, draft.document(), "")
                .result();
    }

    private Revision revision(Release release) {
        return parts.revisions.find(release.spec().revision()).orElseThrow();
    }

    private boolean isSettled(Draft draft, EpisodeState.Scheduled promise) {
        return draft.savedAt()
                .filter(saved -> isSettled(saved, promise.at(), parts.clock.instant()))
                .isPresent();
    }

    /** Whether nobody seems to be writing any more; what was saved before the hour is settled when it comes. */
    static boolean isSettled(Instant saved, Instant hour, Instant now) {
        if (!hour.isAfter(now) && !saved.isAfter(hour)) {
            return true;
        }
        var quiet = hour.minus(LEAD).isAfter(now) ? QUIET : QUIET_NEAR;
        return !saved.plus(quiet).isAfter(now);
    }
}
