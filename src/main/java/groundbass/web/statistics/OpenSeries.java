package groundbass.web.statistics;

import groundbass.audience.download.Download;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The series that are open to an educator, with what is out of them: all that the statistics they read may speak of. */
record OpenSeries(List<Board> boards) {
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

    OpenSeries {
        boards = List.copyOf(boards);
    }

    List<SeriesId> series() {
        return boards.stream().map(board -> board.series().id()).toList();
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

    /** Those of somebody's downloads that are of these lessons. */
    List<Download> among(List<Download> downloads) {
        var open = lessons().keySet();
        return downloads.stream()
                .filter(Download::counts)
                .filter(one -> open.contains(one.file().episode()))
                .toList();
    }
}
