package groundbass.web.student;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.release.Release;
import groundbass.web.answer.EntityTag;
import java.util.Comparator;
import java.util.List;

/** A series with what is out of it, by number; never empty. */
record PublishedSeries(Series series, List<Part> parts) {
    /** One of its lessons with the release that readers get. */
    record Part(Episode episode, Release release) {}

    PublishedSeries {
        parts = List.copyOf(parts);
    }

    /** Differs whenever anything else here does. */
    String version() {
        return EntityTag.ofContent(toString()).opaque();
    }

    /** What came out last, the newest first. */
    List<Part> newest(int most) {
        var byDate = Comparator.comparing(
                        (Part part) -> part.episode().publishedAt().orElseThrow())
                .thenComparing(part -> part.episode().number());
        return parts.stream().sorted(byDate.reversed()).limit(most).toList();
    }
}
