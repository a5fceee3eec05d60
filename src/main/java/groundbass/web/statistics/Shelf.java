package groundbass.web.statistics;

import groundbass.audience.download.Download;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An educator's own series with what is out of them: all that the statistics they read may speak of. */
record Shelf(List<Board> boards) {
    /** One series. */
    record Board(Series series, List<Episode> episodes) {
        Board {
            episodes = List.copyOf(episodes);
        }

        List<EpisodeId> ids() {
            return episodes.stream().map(Episode::id).toList();
        }
    }

    /** An episode and the series that it belongs to. */
    record Lesson(Series series, Episode episode) {
        ZoneId zone() {
            return series.zone();
        }
    }

    Shelf {
        boards = List.copyOf(boards);
    }

    List<EpisodeId> ids() {
        return boards.stream().flatMap(board -> board.ids().stream()).toList();
    }

    Map<EpisodeId, Lesson> lessons() {
        var lessons = new LinkedHashMap<EpisodeId, Lesson>();
        for (var board : boards) {
            board.episodes().forEach(episode -> lessons.put(episode.id(), new Lesson(board.series(), episode)));
        }
        return lessons;
    }

    Optional<Lesson> find(EpisodeId id) {
        return Optional.ofNullable(lessons().get(id));
    }

    /** Those of somebody's downloads that are of this educator's lessons. */
    List<Download> mine(List<Download> downloads) {
        var mine = lessons().keySet();
        return downloads.stream()
                .filter(one -> !one.robot() && !one.repeated())
                .filter(one -> mine.contains(one.file().episode()))
                .toList();
    }
}
