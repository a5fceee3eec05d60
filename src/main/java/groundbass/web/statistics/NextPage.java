package groundbass.web.statistics;

import groundbass.audience.statistics.StatisticsCsv;
import groundbass.text.Message;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** What students took, finished and repeated, by technique and level: of all series that an educator may read, or of one. */
final class NextPage implements PageGroup {
    private final StatisticsServices services;
    private final Tables tables;

    NextPage(StatisticsServices services, Tables tables) {
        this.services = services;
        this.tables = tables;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(
                "/desk/statistics/next", Role.EDUCATOR, ctx -> show(ctx, services.openSeries(ctx), Optional.empty()));
        routes.get("/desk/statistics/next.csv", Role.EDUCATOR, ctx -> send(ctx, services.openSeries(ctx)));
        routes.get("/desk/statistics/series/{id}/next", Role.EDUCATOR, ctx -> {
            var board = services.board(ctx);
            show(ctx, new OpenSeries(List.of(board)), Optional.of(board.series().title()));
        });
        routes.get(
                "/desk/statistics/series/{id}/next.csv",
                Role.EDUCATOR,
                ctx -> send(ctx, new OpenSeries(List.of(services.board(ctx)))));
    }

    private void show(Context ctx, OpenSeries series, Optional<String> title) {
        var reader = services.pages().reader(ctx);
        var learnt = LearntLessons.of(services, series, reader);
        var invented = services.statistics().invented();
        services.pages()
                .show(
                        ctx,
                        "statistics/next",
                        new View(
                                ctx.path(),
                                title,
                                series.series().stream().anyMatch(invented::contains),
                                learnt.days(),
                                learnt.lessons().size(),
                                learnt.young(),
                                techniques(learnt),
                                levels(learnt, reader)));
    }

    private void send(Context ctx, OpenSeries series) throws IOException {
        var reader = services.pages().reader(ctx);
        var learnt = LearntLessons.of(services, series, reader);
        tables.send(ctx, "next", series, csv -> {
            csv.next();
            rows(csv, techniques(learnt));
            rows(csv, levels(learnt, reader));
        });
    }

    private static void rows(StatisticsCsv csv, TeachNext next) {
        next.rows()
                .forEach(row -> csv.next(
                        row.name(),
                        row.lessons(),
                        row.views(),
                        row.students(),
                        row.plays(),
                        row.whole(),
                        row.looped()));
    }

    private static TeachNext techniques(LearntLessons learnt) {
        return TeachNext.by(LearntLesson::techniques, learnt.lessons());
    }

    private static TeachNext levels(LearntLessons learnt, Reader reader) {
        return TeachNext.by(
                lesson -> List.of(reader.say(Message.of(lesson.level().messageKey()))), learnt.lessons());
    }

    /**
     * What the page shows.
     *
     * @param series its title, where it is one
     * @param demo whether its figures are invented
     * @param days the age at which all are compared
     * @param lessons how many are, and {@code young} how many are not that old
     */
    public record View(
            String path,
            Optional<String> series,
            boolean demo,
            int days,
            int lessons,
            int young,
            TeachNext techniques,
            TeachNext levels) {}
}
