package groundbass.audience.statistics;

import groundbass.audience.download.DownloadState;
import groundbass.catalog.episode.EpisodeId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Adds grouped rows of downloads up, per episode. Used by one thread. */
final class EpisodeTallies {
    private final Map<EpisodeId, Tally> tallies = new LinkedHashMap<>();

    /** @param students how many different students took anything of an episode; those that are missing have none */
    EpisodeTallies(List<EpisodeId> episodes, Map<EpisodeId, Long> students) {
        episodes.forEach(episode -> tallies.put(episode, new Tally(students.getOrDefault(episode, 0L))));
    }

    /**
     * Downloads that are alike.
     *
     * @param taken how many
     * @param known how many of them by students
     */
    record Taken(EpisodeId episode, String file, DownloadState state, boolean robot, long taken, long known) {}

    void add(Taken row) {
        Tally tally = tallies.get(row.episode());
        if (row.robot()) tally.robots += row.taken();
        else tally.add(row);
    }

    List<EpisodeUse> inOrder() {
        return tallies.entrySet().stream()
                .map(entry -> entry.getValue().use(entry.getKey()))
                .toList();
    }

    private static final class Tally {
        private final Map<String, DownloadCounts> files = new TreeMap<>();
        private final long students;
        private long anonymous;
        private long robots;

        Tally(long students) {
            this.students = students;
        }

        void add(Taken row) {
            anonymous += row.taken() - row.known();
            files.merge(row.file(), DownloadCounts.of(row.state(), row.taken()), DownloadCounts::plus);
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
