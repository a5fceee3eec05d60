package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Series;
import groundbass.release.Release;
import groundbass.web.answer.EntityTag;
import java.util.Comparator;
import java.util.List;

/** A series with what is out of it, by number; never empty. Immutable. */
public final class PublishedSeries {
    private final Series series;
    private final List<Part> parts;
    private final Outlook outlook;
    private final List<Coming> coming;
    /** Made once: of some thousand lessons it takes longer than all else that a page of them needs. */
    private volatile String version = "";

    /** One of its lessons with the release that readers get. */
    public record Part(Episode episode, Release release) {}

    /** @param outlook what may be known of {@code coming}, which is empty where that is nothing; the next one first */
    PublishedSeries(Series series, List<Part> parts, Outlook outlook, List<Coming> coming) {
        this.series = series;
        this.parts = List.copyOf(parts);
        this.outlook = outlook;
        this.coming = List.copyOf(coming);
    }

    public Series series() {
        return series;
    }

    public List<Part> parts() {
        return parts;
    }

    public Outlook outlook() {
        return outlook;
    }

    public List<Coming> coming() {
        return coming;
    }

    /** Differs whenever anything else here does. */
    public String version() {
        if (version.isEmpty()) {
            version = EntityTag.ofContent(series + " " + parts + " " + outlook + " " + coming)
                    .opaque();
        }
        return version;
    }

    /** What came out last, the newest first. */
    public List<Part> newest(int most) {
        var byDate = Comparator.comparing(
                        (Part part) -> part.episode().publishedAt().orElseThrow())
                .thenComparing(part -> part.episode().number());
        return parts.stream().sorted(byDate.reversed()).limit(most).toList();
    }
}
