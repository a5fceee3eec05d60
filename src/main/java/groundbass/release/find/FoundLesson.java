package groundbass.release.find;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.Level;
import groundbass.identity.Slug;
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
        int strings) {
    /** One by one. */
    public List<String> techniqueWords() {
        return Lists.split(techniques);
    }
}
