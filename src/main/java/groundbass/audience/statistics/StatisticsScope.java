package groundbass.audience.statistics;

import groundbass.audience.rollup.Counting;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;

/** Whose weeks are asked for: a lesson's, or those of a series with all of its lessons. */
public sealed interface StatisticsScope {
    /** Under which it is summed up, and students who have left are counted; bound as {@code subject}. */
    String subject();

    /** Which downloads are meant: SQL on {@code download}. */
    String condition();

    /** A lesson. */
    record OfLesson(EpisodeId lesson) implements StatisticsScope {
        @Override
        public String subject() {
            return lesson.value();
        }

        @Override
        public String condition() {
            return "download.episode_id = :subject";
        }
    }

    /** A series; a student who took something of two of its lessons in one week is one student. */
    record OfSeries(SeriesId series) implements StatisticsScope {
        @Override
        public String subject() {
            return series.value();
        }

        @Override
        public String condition() {
            return Counting.OF_MANY + " in (select id from episode where series_id = :subject)";
        }
    }
}
