package groundbass.audience.statistics;

import groundbass.audience.download.DownloadState;
import groundbass.catalog.episode.EpisodeId;
import java.sql.ResultSet;
import java.sql.SQLException;
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

    /** Adds a row with episode, file, state, robot, how many were taken and how many of them by students. */
    long add(ResultSet row) throws SQLException {
        Tally tally = tallies.get(new EpisodeId(row.getString("episode_id")));
        long taken = row.getLong("taken");
        if (row.getBoolean("robot")) tally.robots += taken;
        else tally.add(row, taken);
        return taken;
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

        void add(ResultSet row, long taken) throws SQLException {
            anonymous += taken - row.getLong("known");
            var counts = DownloadCounts.of(DownloadState.of(row.getString("state")), taken);
            files.merge(row.getString("file_name"), counts, DownloadCounts::plus);
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
