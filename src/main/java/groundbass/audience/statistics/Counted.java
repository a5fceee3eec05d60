package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import java.util.Collection;

/** Which downloads statistics count: those of people, each visitor's first of a day, and none of an educator's own. */
final class Counted {
    /** For a {@code where}. */
    static final String ONES = "not download.robot and not download.own and not download.repeated";

    private Counted() {}

    /**
     * The column to compare with the episodes. Of many episodes nearly every download is one, so that a database which
     * looked each of them up by its index would read all to show some (H2 does); an expression has no index.
     */
    static String episodeOf(Collection<EpisodeId> episodes) {
        return episodes.size() == 1 ? "download.episode_id" : "coalesce(download.episode_id, '')";
    }
}
