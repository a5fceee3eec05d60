package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Series;
import groundbass.release.Release;
import groundbass.web.answer.EntityTag;
import java.util.Comparator;
import java.util.List;

/**
 * A series with what is out of it, by number; never empty.
 *
 * @param outlook what may be known of {@code coming}, which is empty where that is nothing; the next one first
 */
public record PublishedSeries(Series series, List<Part> parts, Outlook outlook, List<Coming> coming) {
    /** One of its lessons with the release that readers get. */
    public record Part(Episode episode, Release release) {}

    public PublishedSeries {
        parts = List.copyOf(parts);
        coming = List.copyOf(coming);
    }

    /** Differs whenever anything else here does. */
    public String version() {
        return EntityTag.ofContent(toString()).opaque();
    }

    /** What came out last, the newest first. */
    public List<Part> newest(int most) {
        var byDate = Comparator.comparing(
                        (Part part) -> part.episode().publishedAt().orElseThrow())
                .thenComparing(part -> part.episode().number());
        return parts.stream().sorted(byDate.reversed()).limit(most).toList();
    }
}
