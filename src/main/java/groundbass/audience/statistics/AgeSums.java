package groundbass.audience.statistics;

import groundbass.audience.rollup.Counting;
import groundbass.audience.rollup.TakenSums;
import groundbass.audience.rollup.Watermark;
import groundbass.catalog.episode.EpisodeId;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/** What was taken of lessons at equal ages: from the sums by the hour, and from the records that are not in them yet. */
final class AgeSums {
    private static final String TAKEN =
            "complete + broken_off + handed_over + running as downloads, newcomers as students";

    private static final String HOURS = "select episode_id, age, " + TAKEN + " from taken_hour"
            + " where episode_id in (<episodes>) and age < " + LessonAges.MONTH + " union all select episode_id, age, "
            + TAKEN + " from (select taken.episode_id, taken.age, " + TakenSums.SUMS + " from "
            + TakenSums.aged("<episode> in (<episodes>) and download.id >= :from")
            + " group by taken.episode_id, taken.age) latest where age < " + LessonAges.MONTH;

    private static final String ALL = "select hours.episode_id as episode, "
            + Stream.of(until("day", LessonAges.DAY), until("week", LessonAges.WEEK), until("month", LessonAges.MONTH))
                    .collect(Collectors.joining(", "))
            + " from (" + HOURS + ") hours group by hours.episode_id";

    private AgeSums() {}

    private static String until(String name, int age) {
        String sum = "coalesce(sum(hours.%s) filter (where hours.age < " + age + "), 0) as " + name + "_%1$s";
        return sum.formatted("downloads") + ", " + sum.formatted("students");
    }

    /** Those of the episodes of which something was taken so early. */
    static Map<EpisodeId, LessonAges> of(Handle handle, List<EpisodeId> episodes) {
        return handle
                .createQuery(ALL)
                .define("episode", Counting.episodeOf(episodes))
                .bindList("episodes", episodes)
                .bind("from", Watermark.of(handle))
                .mapTo(LessonAges.class)
                .stream()
                .collect(Collectors.toMap(LessonAges::episode, ages -> ages));
    }
}
