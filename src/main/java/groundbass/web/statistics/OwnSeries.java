package groundbass.web.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.web.view.PageOf;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The series that are open to an educator, with what is out of them: all that the statistics they read may speak of. */
record OwnSeries(List<Board> boards) {
    /** One series. */
    record Board(Series series, List<Episode> episodes) {
        Board {
            episodes = List.copyOf(episodes);
        }

        /** What is left of it where some of its first episodes are left out and no more than {@code most} are kept. */
        Board part(int skipped, int most) {
            return new Board(series, episodes.stream().skip(skipped).limit(most).toList());
        }

        List<EpisodeId> ids() {
            return episodes.stream().map(Episode::id).toList();
        }

        StatisticsScope scope() {
            return new StatisticsScope.OfSeries(series.id());
        }
    }

    /** An episode and the series that it belongs to. */
    record Lesson(Series series, Episode episode) {
        ZoneId zone() {
            return series.zone();
        }
    }

    OwnSeries {
        boards = List.copyOf(boards);
    }

    /** The lessons of one page of a list of all of them, under their series. */
    OwnSeries page(PageOf page) {
        var parts = new ArrayList<Board>();
        int skipped = page.skipped();
        int left = page.size();
        for (Board board : boards) {
            Board part = board.part(Math.max(0, skipped), Math.max(0, left));
            // a series that has nothing out is still told of, on the page where it would stand
            boolean here = board.episodes().isEmpty()
                    ? skipped <= 0 && left > 0
                    : !part.episodes().isEmpty();
            if (here) {
                parts.add(part);
            }
            skipped -= board.episodes().size();
            left -= part.episodes().size();
        }
        return new OwnSeries(parts);
    }

    /** The series of an id; with all its lessons. */
    Optional<Board> board(SeriesId id) {
        return boards.stream().filter(board -> board.series().id().equals(id)).findFirst();
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
        return boards.stream()
                .flatMap(board -> board.episodes().stream()
                        .filter(episode -> episode.id().equals(id))
                        .map(episode -> new Lesson(board.series(), episode)))
                .findFirst();
    }

    /** Those of somebody's downloads that are of these lessons. */
    List<Download> mine(List<Download> downloads) {
        var mine = lessons().keySet();
        return downloads.stream()
                .filter(Download::counts)
                .filter(one -> mine.contains(one.file().episode()))
                .toList();
    }
}
