package groundbass.audience.visit;

import groundbass.catalog.episode.EpisodeId;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.mapper.Nested;

/** The sums of visits, as they are written; the last seconds are not in them. Reads as many rows as a lesson has ages and bars. */
public final class VisitFigures {
    private final Jdbi jdbi;

    public VisitFigures(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    private record Row(
            EpisodeId episode, VisitKind kind, @Nested VisitNumbers numbers) {}

    /** One entry for each of the lessons, in their order, also where nobody came. */
    public List<VisitsOfLesson> of(List<EpisodeId> lessons) {
        if (lessons.isEmpty()) return List.of();
        var found = new HashMap<EpisodeId, Map<VisitKind, VisitNumbers>>();
        rows(lessons).forEach(row -> found.computeIfAbsent(row.episode(), id -> new EnumMap<>(VisitKind.class))
                .put(row.kind(), row.numbers()));
        return lessons.stream()
                .map(lesson -> new VisitsOfLesson(lesson, found.getOrDefault(lesson, Map.of())))
                .toList();
    }

    private List<Row> rows(List<EpisodeId> lessons) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select episode_id as episode, kind,
                            coalesce(sum(visitors) filter (where age < 1), 0) as first_day,
                            coalesce(sum(visitors) filter (where age < 7), 0) as first_week,
                            coalesce(sum(visitors) filter (where age < 28), 0) as first_month,
                            sum(visitors) as in_all
                        from visit_sum where episode_id in (<lessons>) group by episode_id, kind""")
                .bindList("lessons", lessons)
                .mapTo(Row.class)
                .list());
    }

    /** How far the lines of a lesson were played, each from its first quarter on. */
    public List<PlayedPart> parts(EpisodeId lesson) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select line, quarters, visitors from played_part where episode_id = :lesson
                        order by line, quarters""")
                .bind("lesson", lesson)
                .mapTo(PlayedPart.class)
                .list());
    }

    /** The bars of a lesson that were repeated, in their order, those of its latest release first. */
    public List<LoopedBar> loops(EpisodeId lesson) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select release_number as release, line, bar, visitors from repeated_bar
                        where episode_id = :lesson order by release_number desc, line, bar""")
                .bind("lesson", lesson)
                .mapTo(LoopedBar.class)
                .list());
    }

    /** The courses to which links were followed, the most used first; also those that the lesson names no more. */
    public List<CourseClicks> courses(EpisodeId lesson) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select address, visitors from course_click where episode_id = :lesson
                        order by visitors desc, address""")
                .bind("lesson", lesson)
                .mapTo(CourseClicks.class)
                .list());
    }
}
