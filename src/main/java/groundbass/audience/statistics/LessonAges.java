package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import org.jdbi.v3.core.mapper.Nested;

/** What was taken of a lesson in the first 24 hours, 7 and 28 days after it was brought out, as far as these are over. */
public record LessonAges(
        EpisodeId episode,
        @Nested("day") AtAge day,
        @Nested("week") AtAge week,
        @Nested("month") AtAge month) {
    /** Hours of each age. */
    public static final int DAY = 24;

    public static final int WEEK = 7 * DAY;
    public static final int MONTH = 28 * DAY;

    static LessonAges none(EpisodeId episode) {
        var nothing = new AtAge(0, 0);
        return new LessonAges(episode, nothing, nothing, nothing);
    }
}
