package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import java.util.List;

/**
 * What an episode was used for.
 *
 * @param students how many different students took anything of it
 * @param anonymous how many of the downloads were by nobody known
 * @param robots requests of robots, which are in none of the other numbers
 * @param files those taken at least once, by name
 */
public record EpisodeUse(
        EpisodeId episode, long students, long anonymous, DownloadCounts downloads, long robots, List<FileUse> files) {
    public EpisodeUse {
        files = List.copyOf(files);
    }
}
