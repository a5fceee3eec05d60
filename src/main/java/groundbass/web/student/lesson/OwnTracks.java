package groundbass.web.student.lesson;

import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.Revisions;
import groundbass.document.BackingTrack;
import groundbass.release.Release;
import java.util.List;

/** What the educator called the recordings of a release. */
public final class OwnTracks {
    private final Revisions revisions;

    public OwnTracks(Revisions revisions) {
        this.revisions = revisions;
    }

    List<BackingTrack> of(Release release) {
        return revisions
                .find(release.spec().revision())
                .map(Revision::document)
                .map(document -> document.backingTracks())
                .orElse(List.of());
    }
}
