package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.publishing.preflight.Difference;
import groundbass.release.Release;
import java.util.Optional;

/** In what the draft of an episode differs from what readers see, or from what is fixed for its hour. */
final class DraftChanges {
    private final PublishingParts parts;

    DraftChanges(PublishingParts parts) {
        this.parts = parts;
    }

    /** Empty where they are the same, or where nothing is out or promised. */
    Optional<Difference> of(EducatorId who, Episode episode) {
        return against(episode)
                .flatMap(release -> parts.desk.draft(who, episode.id()).flatMap(draft -> difference(release, draft)));
    }

    /** A correction that is on its way counts as what readers see next. */
    private Optional<Release> against(Episode episode) {
        if (episode.isPublished()) {
            return parts.releases
                    .latest(episode.id())
                    .filter(Release::isUnderWay)
                    .or(() -> parts.releases.current(episode.id()));
        }
        return episode.state() instanceof EpisodeState.Scheduled
                ? parts.releases.latest(episode.id())
                : Optional.empty();
    }

    private Optional<Difference> difference(Release release, Draft draft) {
        var fixed =
                parts.revisions.find(release.spec().revision()).orElseThrow().document();
        if (fixed.equals(draft.document())) {
            return Optional.empty();
        }
        var clauses = DocumentComparison.clauses(fixed, draft.document());
        return Optional.of(new Difference(
                        release.spec().release(), release.publishedAt().isPresent(), clauses))
                .filter(difference -> !difference.clauses().isEmpty());
    }
}
