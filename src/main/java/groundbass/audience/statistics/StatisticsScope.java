package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import java.util.List;

/** Whose weeks are asked for: a lesson's, or those of a series with the lessons that are told of. */
public sealed interface StatisticsScope {
    List<EpisodeId> episodes();

    /** Under which students who have left are counted. */
    String subject();

    /** A lesson. */
    record OfLesson(EpisodeId lesson) implements StatisticsScope {
        @Override
        public List<EpisodeId> episodes() {
            return List.of(lesson);
        }

        @Override
        public String subject() {
            return lesson.value();
        }
    }

    /** A series; a student who took something of two of its lessons in one week is one student. */
    record OfSeries(SeriesId series, List<EpisodeId> episodes) implements StatisticsScope {
        public OfSeries {
            episodes = List.copyOf(episodes);
        }

        @Override
        public String subject() {
            return series.value();
        }
    }
}
