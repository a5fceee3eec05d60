package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Neighbours;
import groundbass.catalog.series.Series;
import groundbass.release.Release;
import groundbass.web.answer.EntityTag;
import java.time.Instant;

/**
 * A lesson that is out (or, in a preview, will be), with all that its page depends on besides the reader.
 *
 * @param corrected whether {@code release} took the place of an earlier one
 * @param out       since when, or from when, students have this release
 * @param version   differs whenever anything else here does
 */
public record PublishedLesson(
        Series series,
        Episode episode,
        Release release,
        boolean corrected,
        Neighbours neighbours,
        Instant out,
        String version) {
    public static PublishedLesson of(
            Series series, Episode episode, Release release, boolean corrected, Neighbours neighbours, Instant out) {
        String all = series + "\n" + episode + "\n" + release.id() + "\n" + release.isSoundToFollow() + "\n" + corrected
                + "\n" + neighbours;
        return new PublishedLesson(
                series,
                episode,
                release,
                corrected,
                neighbours,
                out,
                EntityTag.ofContent(all).opaque());
    }
}
