package groundbass.publishing;

import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.EpisodeState;
import groundbass.publishing.preflight.Difference;
import groundbass.release.Release;
import java.util.Optional;

/** In what the draft of an episode differs from what readers see, or from what is fixed for its hour. */
final class DraftChanges {
    private DraftChanges() {}

    /** Empty where they are the same, or where nothing is out or promised. */
    static Optional<Difference> of(LessonLook look) {
        return against(look).flatMap(release -> look.draft().flatMap(draft -> difference(look, release, draft)));
    }

    /** A correction that is on its way counts as what readers see next. */
    private static Optional<Release> against(LessonLook look) {
        if (look.episode().isPublished()) {
            return look.latest().filter(Release::isUnderWay).or(look::current);
        }
        return look.episode().state() instanceof EpisodeState.Scheduled ? look.latest() : Optional.empty();
    }

    private static Optional<Difference> difference(LessonLook look, Release release, Draft draft) {
        var fixed = look.shownBy(release).document();
        if (fixed.equals(draft.document())) {
            return Optional.empty();
        }
        var clauses = DocumentComparison.clauses(fixed, draft.document());
        return Optional.of(new Difference(
                        release.spec().release(), release.publishedAt().isPresent(), clauses))
                .filter(difference -> !difference.clauses().isEmpty());
    }
}
