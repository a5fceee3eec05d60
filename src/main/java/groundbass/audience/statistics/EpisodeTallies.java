package groundbass.audience.statistics;

import groundbass.audience.download.DownloadState;
import groundbass.catalog.episode.EpisodeId;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Adds grouped rows of downloads up, per episode. Used by one thread. */
final class EpisodeTallies {
    private final Map<EpisodeId, Tally> tallies = new LinkedHashMap<>();

    EpisodeTallies(List<EpisodeId> episodes) {
        episodes.forEach(episode -> tallies.put(episode, new Tally()));
    }

    /** Adds a row with episode, file, student, state, robot and how many were taken; returns how many. */
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
        private final Set<String> students = new HashSet<>();
        private final Map<String, DownloadCounts> files = new TreeMap<>();
        private long anonymous;
        private long robots;

        void add(ResultSet row, long taken) throws SQLException {
            String student = row.getString("student_id");
            if (student == null) anonymous += taken;
            else students.add(student);
            var counts = DownloadCounts.of(DownloadState.of(row.getString("state")), taken);
            files.merge(row.getString("file_name"), counts, DownloadCounts::plus);
        }

        EpisodeUse use(EpisodeId episode) {
            var all = files.values().stream().reduce(DownloadCounts.NONE, DownloadCounts::plus);
            var each = files.entrySet().stream()
                    .map(file -> new FileUse(file.getKey(), file.getValue()))
                    .toList();
            return new EpisodeUse(episode, students.size(), anonymous, all, robots, each);
        }
    }
}
