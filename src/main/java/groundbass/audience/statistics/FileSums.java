package groundbass.audience.statistics;

import groundbass.audience.rollup.Counting;
import groundbass.audience.rollup.TakenSums;
import groundbass.audience.rollup.Watermark;
import groundbass.catalog.episode.EpisodeId;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** What was taken of each file of some episodes: from the sums, and from the records that are not in them yet. */
final class FileSums {
    private static final String ALL = "select episode_id as episode, file_name as file, " + TakenSums.NAMES
            + " from taken_file where episode_id in (<episodes>) union all"
            + " select taken.episode_id, taken.file_name, " + TakenSums.SUMS + " from "
            + TakenSums.records("<episode> in (<episodes>) and download.id >= :from")
            + " group by taken.episode_id, taken.file_name";

    private FileSums() {}

    /** Both parts are of one moment only in a transaction that reads one moment. */
    static List<EpisodeTallies.Taken> of(Handle handle, List<EpisodeId> episodes) {
        return handle.createQuery(ALL)
                .define("episode", Counting.episodeOf(episodes))
                .bindList("episodes", episodes)
                .bind("from", Watermark.of(handle))
                .mapTo(EpisodeTallies.Taken.class)
                .list();
    }
}
