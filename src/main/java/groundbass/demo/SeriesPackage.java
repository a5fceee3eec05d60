package groundbass.demo;

import groundbass.catalog.series.SeriesForm;
import groundbass.document.EpisodeDocument;
import groundbass.identity.Slug;
import java.util.List;
import java.util.OptionalInt;

/** A whole series on its way in: what it says and each of its episodes, nothing of this site's rows. */
public record SeriesPackage(SeriesForm form, Slug slug, List<EpisodePackage> episodes) {
    /**
     * One episode.
     *
     * @param publishedWeeksAgo whole weeks before the import; empty where it is not out
     */
    public record EpisodePackage(String folder, EpisodeDocument document, OptionalInt publishedWeeksAgo) {}

    public SeriesPackage {
        episodes = List.copyOf(episodes);
    }
}
