package groundbass.publishing;

import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.document.EpisodeDocument;
import groundbass.form.Outcome;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Enters what an educator wishes, exactly once: here a button that was pressed twice, two windows, and the hour that
 * strikes meanwhile meet, and the lesson is locked until it is settled.
 */
final class Entering {
    private final PublishingParts parts;

    Entering(PublishingParts parts) {
        this.parts = parts;
    }

    /**
     * Refused where the lesson stands otherwise by now or was thrown away, or where this document is out and would be built
     * the same way.
     */
    Outcome<ReleaseId> enter(EducatorId who, EpisodeId id, EpisodeDocument document, Wish wish) {
        return parts.jdbi.inTransaction(handle -> parts.episodes
                .lock(handle, id)
                .map(episode -> enter(handle, who, episode, document, wish))
                .orElseGet(() -> Outcome.refused("", "catalog.problem.gone")));
    }

    private Outcome<ReleaseId> enter(
            Handle handle, EducatorId who, Episode episode, EpisodeDocument document, Wish wish) {
        var inTheWay = wish.inTheWay(episode.state());
        if (inTheWay.isPresent()) {
            return Outcome.refused(List.of(inTheWay.get()));
        }
        var revision = parts.desk.fix(handle, who, episode, document, "");
        return revision.result()
                .map(fixed -> enter(handle, who, episode, fixed, wish))
                .orElseGet(() -> Outcome.refused(revision.problems()));
    }

    private Outcome<ReleaseId> enter(Handle handle, EducatorId who, Episode episode, Revision revision, Wish wish) {
        var before = parts.releases.latest(episode.id()).map(Release::id);
        var release = parts.freezing.release(handle, episode, revision);
        if (release.publishedAt().isPresent()) {
            return Outcome.refused("", "publishing.problem.unchanged");
        }
        parts.accepted.letStand(handle, who, episode.id(), wish.accepted());
        parts.releases.builds().tryNow(handle, release.id());
        parts.releases.annotate(handle, release.id(), wish.note());
        boolean known = before.filter(release.id()::equals).isPresent();
        if (!known || !isEntered(episode, wish)) {
            promise(handle, who, episode, release, revision, wish);
        }
        return Outcome.done(release.id());
    }

    /** Whether the wish for this release was entered before; a correction is, as soon as its release is there. */
    private static boolean isEntered(Episode episode, Wish wish) {
        return episode.isPublished() || wish.isGranted(episode.state());
    }

    private void promise(
            Handle handle, EducatorId who, Episode episode, Release release, Revision revision, Wish wish) {
        if (!episode.isPublished()) {
            parts.episodes.schedule(handle, episode.id(), scheduled(wish.promise(), release));
        }
        parts.audit.append(handle, who, AuditWord.EPISODE_PROMISED, episode.id() + " revision " + revision.number());
    }

    private EpisodeState.Scheduled scheduled(Promise promise, Release release) {
        return new EpisodeState.Scheduled(
                promise.at(),
                promise.zone(),
                promise.local(),
                parts.clock.instant(),
                release.spec().release());
    }
}
