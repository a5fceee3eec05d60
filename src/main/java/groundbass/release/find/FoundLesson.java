package groundbass.release.find;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.Level;
import groundbass.identity.Slug;
import groundbass.release.ReleaseId;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * A lesson that is out, as a list of what was found shows it.
 *
 * @param zone of its series
 * @param techniques by line text's words, a space between two
 * @param keyName as line text writes it
 * @param tempo beats a minute
 * @param release that readers get
 * @param pictured whether it has a picture for lists
 */
public record FoundLesson(
        EpisodeId episode,
        Slug series,
        String seriesTitle,
        ZoneId zone,
        int number,
        String title,
        Level level,
        Instant publishedAt,
        String techniques,
        String keyName,
        String meter,
        int tempo,
        int strings,
        ReleaseId release,
        boolean pictured) {
    /** One by one. */
    public List<String> techniqueWords() {
        return Lists.split(techniques);
    }
}
