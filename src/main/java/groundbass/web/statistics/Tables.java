package groundbass.web.statistics;

import groundbass.audience.statistics.StatisticsCsv;
import groundbass.audience.statistics.Taken;
import groundbass.catalog.episode.EpisodeId;
import groundbass.text.Message;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The same figures as tables for a spreadsheet. */
final class Tables implements PageGroup {
    // the parameter says that the first row names the columns (RFC 4180 section 3)
    private static final String CSV = "text/csv; charset=utf-8; header=present";

    private final Room room;

    Tables(Room room) {
        this.room = room;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics/episodes.csv", Role.EDUCATOR, this::episodes);
        routes.get("/desk/statistics/students.csv", Role.EDUCATOR, this::students);
        routes.get("/desk/statistics/episodes/{id}/downloads.csv", Role.EDUCATOR, this::episode);
        routes.get("/desk/statistics/students/{id}/downloads.csv", Role.EDUCATOR, this::student);
    }

    private void episodes(Context ctx) {
        var shelf = room.shelf(ctx);
        send(ctx, "episodes", csv(ctx, shelf).episodes(room.statistics().ofEpisodes(shelf.ids())));
    }

    /** Only what students took: downloads of nobody known are in the table of their lesson. */
    private void students(Context ctx) {
        var shelf = room.shelf(ctx);
        var known = room.statistics().taken(shelf.ids()).stream()
                .filter(taken -> taken.student().isPresent())
                .toList();
        send(ctx, "students", csv(ctx, shelf).taken(known));
    }

    private void episode(Context ctx) {
        var shelf = room.shelf(ctx);
        var lesson = EpisodeId.parse(ctx.pathParam("id")).flatMap(shelf::find).orElseThrow(NotFoundResponse::new);
        var taken = room.statistics().taken(List.of(lesson.episode().id()));
        send(
                ctx,
                lesson.series().slug() + "-" + lesson.episode().slug(),
                csv(ctx, shelf).taken(taken));
    }

    private void student(Context ctx) {
        var shelf = room.shelf(ctx);
        var found = StudentPages.Found.in(room, shelf, ctx.pathParam("id"));
        var email = Optional.of(found.student().email());
        var taken = found.downloads().stream()
                .map(download -> new Taken(email, download))
                .toList();
        send(ctx, "student", csv(ctx, shelf).taken(taken));
    }

    private StatisticsCsv csv(Context ctx, Shelf shelf) {
        var reader = room.pages().reader(ctx);
        var lessons = shelf.lessons();
        return new StatisticsCsv(reader.locale(), id -> lessons.get(id).zone(), titles(shelf, reader));
    }

    private Function<EpisodeId, String> titles(Shelf shelf, Reader reader) {
        Map<EpisodeId, String> titles = shelf.boards().stream()
                .flatMap(board -> {
                    boolean demo = Room.isDemo(room.statistics().students(board.ids()));
                    String key = demo ? "statistics.csv.demo" : "statistics.csv.episode";
                    return board.episodes().stream()
                            .map(episode -> Map.entry(
                                    episode.id(),
                                    reader.say(Message.of(
                                            key, board.series().title(), episode.number(), episode.title()))));
                })
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        return titles::get;
    }

    private static void send(Context ctx, String name, String table) {
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + ".csv\"");
        ctx.contentType(CSV).result(table);
    }
}
