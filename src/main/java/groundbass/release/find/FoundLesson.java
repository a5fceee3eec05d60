package groundbass.release.find;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.Level;
import groundbass.identity.Slug;
import groundbass.release.ReleaseId;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * A lesson that is out, as a list of what was found shows it.
 *
 * @param zone of its series
 * @param techniques by line text's words, a space between two
 * @param keyName as line text writes it
 * @param tempo beats a minute
 * @param picture the release that has its picture in lists; empty where it was made without one
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
        Optional<ReleaseId> picture) {
    /** One by one. */
    public List<String> techniqueWords() {
        return Lists.split(techniques);
    }
}
