package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.mapper.Nested;

/** Adds sums of files up, per episode. Used by one thread. */
final class EpisodeTallies {
    private final Map<EpisodeId, Tally> tallies = new LinkedHashMap<>();

    EpisodeTallies(List<EpisodeId> episodes) {
        episodes.forEach(episode -> tallies.put(episode, new Tally()));
    }

    /**
     * What was taken of one file; a file may come more than once, with other records.
     *
     * @param nobody downloads without a sign-in
     * @param newcomers students whose first download of the episode was of this file
     */
    record Taken(
            EpisodeId episode,
            String file,
            @Nested DownloadCounts downloads,
            long nobody,
            long newcomers,
            long robots) {}

    void add(Taken row) {
        tallies.get(row.episode()).add(row);
    }

    List<EpisodeUse> inOrder() {
        return tallies.entrySet().stream()
                .map(entry -> entry.getValue().use(entry.getKey()))
                .toList();
    }

    private static final class Tally {
        private final Map<String, DownloadCounts> files = new TreeMap<>();
        private long students;
        private long anonymous;
        private long robots;

        void add(Taken row) {
            students += row.newcomers();
            anonymous += row.nobody();
            robots += row.robots();
            if (row.downloads().all() > 0) {
                files.merge(row.file(), row.downloads(), DownloadCounts::plus);
            }
        }

        EpisodeUse use(EpisodeId episode) {
            var all = files.values().stream().reduce(DownloadCounts.NONE, DownloadCounts::plus);
            var each = files.entrySet().stream()
                    .map(file -> new FileUse(file.getKey(), file.getValue()))
                    .toList();
            return new EpisodeUse(episode, students, anonymous, all, robots, each);
        }
    }
}
