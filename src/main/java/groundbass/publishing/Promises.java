package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.document.EpisodeDocument;
import groundbass.publishing.preflight.Around;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.publishing.preflight.Preflight;
import groundbass.release.Release;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jdbi.v3.core.Handle;

/**
 * Takes what is written after a promise into it. Whatever was saved before the hour goes out if nothing keeps it from it:
 * a draft that has been left alone for a while is fixed and built beside what was built before, and at the hour itself the
 * last one. Where that is not built in time, what was built before goes out at the hour, and the later state follows as a
 * correction as soon as it can. Where the draft may not go out, the last state that may does.
 */
final class Promises {
    /** So long before the hour a draft need be left alone only for {@link #QUIET_NEAR}. */
    static final Duration LEAD = Duration.ofMinutes(30);

    static final Duration QUIET = Duration.ofMinutes(10);
    static final Duration QUIET_NEAR = Duration.ofMinutes(1);

    private final PublishingParts parts;
    private final Map<EpisodeId, Judged> judged = new ConcurrentHashMap<>();

    Promises(PublishingParts parts) {
        this.parts = parts;
    }

    /**
     * How a promised lesson stands.
     *
     * @param wanted the release that shows its latest fixed state
     * @param showable what would go out if the hour came now; empty where nothing is built
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

    /** Empty where nothing was ever fixed for it. */
    Optional<Stand> stand(Episode episode, EpisodeState.Scheduled promise) {
        var all = parts.releases.of(episode.id());
        return all.stream().findFirst().map(wanted -> stand(episode, promise, wanted, all));
    }

    private Stand stand(Episode episode, EpisodeState.Scheduled promise, Release wanted, List<Release> all) {
        var fixed = revision(wanted).document();
        var written = parts.desk.draft(owner(episode), episode.id());
        var draft = written.filter(one -> !promise.isAtOnce() && !one.document().equals(fixed));
        boolean near = !promise.at().minus(LEAD).isAfter(parts.clock.instant());
        boolean asked = near || draft.filter(one -> isSettled(one, promise)).isPresent();
        var holding =
                draft.filter(one -> asked).map(one -> holding(episode, one)).orElseGet(List::of);
        var latest = written.map(Draft::document).orElse(fixed);
        List<LessonRemark> kept = near ? keptBack(episode, fixed, latest) : List.of();
        return new Stand(wanted, showable(promise, wanted, all), draft, holding, kept);
    }

    private static Optional<Release> showable(EpisodeState.Scheduled promise, Release wanted, List<Release> all) {
        return all.stream()
                .filter(release -> release.spec().release() >= promise.firstRelease())
                .filter(release -> release.isReady() && release.spec().namesAlike(wanted.spec()))
                .findFirst();
    }

    /** Rights may be unsettled again after the promise; and a newer program may know better what no hand can play. */
    private List<LessonRemark> keptBack(Episode episode, EpisodeDocument fixed, EpisodeDocument latest) {
        var kept = new ArrayList<LessonRemark>();
        Preflight.clearance(latest.rights().clearance()).ifPresent(kept::add);
        var around = Around.site(parts.settings.current().imprint());
        parts.preflight.look(episode.id(), fixed, around).remarks().stream()
                .filter(LessonRemark::blocks)
                .filter(remark -> !kept.contains(remark))
                .forEach(kept::add);
        return kept;
    }

    /** What keeps this draft from going out: worked out once for each of its versions, since the pass asks every few seconds. */
    private List<LessonRemark> holding(Episode episode, Draft draft) {
        var now = new Version(draft.version(), parts.addresses.site());
        var remarks = judged.compute(
                episode.id(),
                (id, before) -> before != null && before.of().equals(now)
                        ? before
                        : new Judged(now, parts.preflight.remarks(id, draft.document())));
        return parts.accepted.holding(episode.id(), remarks.remarks());
    }

    private record Version(int draft, String site) {}

    private record Judged(Version of, List<LessonRemark> remarks) {}

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

    EducatorId owner(Episode episode) {
        return parts.catalog.find(episode.series()).orElseThrow().owner();
    }
}
