package groundbass.web.statistics;

import groundbass.audience.statistics.EpisodeUse;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.catalog.episode.Episode;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.statistics.OpenSeries.Lesson;
import io.javalin.http.Context;
import java.util.List;

/** One lesson: its weeks, its files, and who took what and when. */
final class LessonFiguresPage implements PageGroup {
    /** More are in the table to download. */
    private static final int SHOWN = 200;

    private final StatisticsServices services;

    LessonFiguresPage(StatisticsServices services) {
        this.services = services;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics/episodes/{id}", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        services.pages().show(ctx, "statistics/episode", view(ctx, services.lesson(ctx)));
    }

    private View view(Context ctx, Lesson lesson) {
        var scope = new StatisticsScope.OfLesson(lesson.episode().id());
        var statistics = services.statistics();
        var days = Days.of(services.pages().reader(ctx), lesson.zone());
        var use = statistics.ofEpisode(lesson.episode().id());
        boolean told = services.seesTakers(ctx, lesson.series().id());
        var taken = told
                ? statistics.latest(lesson.episode().id(), SHOWN).stream()
                        .map(one -> TakenRow.of(one, days))
                        .toList()
                : List.<TakenRow>of();
        var id = lesson.episode().id();
        var visits = services.visits();
        var release = services.released().of(id);
        var ages = services.ages(List.of(lesson.episode())).get(0);
        return new View(
                ctx.path(),
                lesson.series().title(),
                lesson.episode(),
                statistics.invented().contains(lesson.series().id()),
                use,
                WeekChart.of(statistics.byWeek(scope, services.weeks(lesson.zone())), services.today(lesson.zone())),
                days,
                Funnel.of(visits.of(List.of(id)).get(0), ages, use.downloads().all()),
                PlayedLines.of(release, visits.parts(id), visits.loops(id)),
                visits.courses(id).stream()
                        .map(clicks -> CourseRow.of(clicks, release))
                        .toList(),
                services.counting().getAsBoolean(),
                told,
                taken,
                use.downloads().all());
    }

    /**
     * What the page shows.
     *
     * @param demo whether its figures are invented
     * @param funnel from opening the page to following a course
     * @param played how far, and which bars again and again
     * @param courses to which anybody followed a link, the most first
     * @param counting whether the site counts what is done on its pages
     * @param told whether its reader may see who took what
     * @param taken the latest downloads; none where they may not be told
     * @param all how many there are of them
     */
    public record View(
            String path,
            String series,
            Episode episode,
            boolean demo,
            EpisodeUse use,
            WeekChart chart,
            Days days,
            Funnel funnel,
            PlayedLines played,
            List<CourseRow> courses,
            boolean counting,
            boolean told,
            List<TakenRow> taken,
            long all) {}
}
