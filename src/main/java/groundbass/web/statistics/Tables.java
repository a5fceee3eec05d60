package groundbass.web.statistics;

import groundbass.audience.statistics.AddressedDownload;
import groundbass.audience.statistics.LessonAges;
import groundbass.audience.statistics.StatisticsCsv;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.text.Message;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.statistics.OpenSeries.Board;
import groundbass.web.statistics.OpenSeries.Lesson;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/** The same figures as tables for a spreadsheet. */
final class Tables implements PageGroup {
    // the parameter says that the first row names the columns (RFC 4180 section 3)
    private static final String CSV = "text/csv; charset=utf-8; header=present";

    /** Lessons that are summed up at once. */
    private static final int AT_ONCE = 100;

    /** Two years of weeks: a row for each pair of them. */
    private static final int ALL_WEEKS = 104;

    private final StatisticsServices services;

    Tables(StatisticsServices services) {
        this.services = services;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics/episodes.csv", Role.EDUCATOR, this::episodes);
        routes.get("/desk/statistics/series/{id}/ages.csv", Role.EDUCATOR, this::ages);
        routes.get("/desk/statistics/series/{id}/cohorts.csv", Role.EDUCATOR, this::cohorts);
        routes.get("/desk/statistics/series/{id}/clock.csv", Role.EDUCATOR, this::clock);
        routes.get("/desk/statistics/students.csv", Role.EDUCATOR, this::students);
        routes.get("/desk/statistics/episodes/{id}/downloads.csv", Role.EDUCATOR, this::episode);
        routes.get("/desk/statistics/episodes/{id}/visits.csv", Role.EDUCATOR, this::visits);
        routes.get("/desk/statistics/episodes/{id}/played.csv", Role.EDUCATOR, this::played);
        routes.get("/desk/statistics/episodes/{id}/repeated.csv", Role.EDUCATOR, this::repeated);
        routes.get("/desk/statistics/students/{id}/downloads.csv", Role.EDUCATOR, this::student);
    }

    private void episodes(Context ctx) throws IOException {
        var openSeries = services.openSeries(ctx);
        send(ctx, "episodes", openSeries, csv -> {
            csv.episodes();
            for (List<EpisodeId> part : parts(openSeries.ids())) {
                services.statistics().ofEpisodes(part).forEach(csv::episode);
            }
        });
    }

    private static <T> List<List<T>> parts(List<T> lessons) {
        return IntStream.iterate(0, from -> from < lessons.size(), from -> from + AT_ONCE)
                .mapToObj(from -> lessons.subList(from, Math.min(lessons.size(), from + AT_ONCE)))
                .toList();
    }

    private void ages(Context ctx) throws IOException {
        var board = services.board(ctx);
        send(ctx, board.series().slug() + "-ages", new OpenSeries(List.of(board)), csv -> {
            csv.ages();
            for (List<Episode> part : parts(board.episodes())) {
                services.ages(part).forEach(row -> ages(csv, row));
            }
        });
    }

    private static void ages(StatisticsCsv csv, AgeChart.Row row) {
        var lesson = row.episode().id();
        row.day().ifPresent(taken -> csv.age(lesson, LessonAges.DAY, taken));
        row.week().ifPresent(taken -> csv.age(lesson, LessonAges.WEEK, taken));
        row.month().ifPresent(taken -> csv.age(lesson, LessonAges.MONTH, taken));
    }

    private void cohorts(Context ctx) throws IOException {
        var board = services.board(ctx);
        var cohorts = services.use().cohorts(board.series().id(), ALL_WEEKS);
        send(ctx, board.series().slug() + "-cohorts", new OpenSeries(List.of(board)), csv -> csv.cohorts(cohorts));
    }

    private void clock(Context ctx) throws IOException {
        var board = services.board(ctx);
        var hours = services.use().clock(board.series().id());
        send(ctx, board.series().slug() + "-clock", new OpenSeries(List.of(board)), csv -> csv.clock(hours));
    }

    /** Only what students took: downloads of nobody known are in the table of their lesson. */
    private void students(Context ctx) throws IOException {
        var openSeries = services.takenSeries(ctx);
        send(ctx, "students", openSeries, csv -> {
            csv.downloads();
            services.statistics().takenByStudents(openSeries.series(), csv::taken);
        });
    }

    private void episode(Context ctx) throws IOException {
        var lesson = services.takenLesson(ctx);
        sendOf(ctx, lesson, "", csv -> {
            csv.downloads();
            services.statistics().taken(lesson.episode().id(), csv::taken);
        });
    }

    private void visits(Context ctx) throws IOException {
        var lesson = services.lesson(ctx);
        var id = lesson.episode().id();
        sendOf(ctx, lesson, "-visits", csv -> {
            csv.visits();
            csv.visits(services.visits().of(List.of(id)).get(0));
            services.visits().courses(id).forEach(clicks -> csv.clicks(id, clicks));
        });
    }

    private void played(Context ctx) throws IOException {
        var lesson = services.lesson(ctx);
        var id = lesson.episode().id();
        sendOf(ctx, lesson, "-played", csv -> {
            csv.played();
            services.visits().parts(id).forEach(part -> csv.played(id, part));
        });
    }

    private void repeated(Context ctx) throws IOException {
        var lesson = services.lesson(ctx);
        var id = lesson.episode().id();
        sendOf(ctx, lesson, "-repeated", csv -> {
            csv.repeated();
            services.visits().loops(id).forEach(bar -> csv.repeated(id, bar));
        });
    }

    private void sendOf(Context ctx, Lesson lesson, String end, Consumer<StatisticsCsv> table) throws IOException {
        String name = lesson.series().slug() + "-" + lesson.episode().slug() + end;
        send(ctx, name, new OpenSeries(List.of(new Board(lesson.series(), List.of(lesson.episode())))), table);
    }

    private void student(Context ctx) throws IOException {
        var openSeries = services.takenSeries(ctx);
        var found = TakerPages.Found.in(services, openSeries, ctx.pathParam("id"));
        var email = Optional.of(found.student().email());
        send(ctx, "student", openSeries, csv -> {
            csv.downloads();
            found.downloads().forEach(download -> csv.taken(new AddressedDownload(email, download)));
        });
    }

    /** Writes a table while it is read, so that its length does not matter. */
    void send(Context ctx, String name, OpenSeries openSeries, Consumer<StatisticsCsv> table) throws IOException {
        var reader = services.pages().reader(ctx);
        var lessons = openSeries.lessons();
        var titles = titles(openSeries, reader);
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + ".csv\"");
        ctx.contentType(CSV);
        var out = new BufferedWriter(new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8));
        table.accept(new StatisticsCsv(reader.locale(), id -> lessons.get(id).zone(), titles::get, out));
        out.flush();
    }

    private Map<EpisodeId, String> titles(OpenSeries openSeries, Reader reader) {
        var invented = services.statistics().invented();
        var titles = new HashMap<EpisodeId, String>();
        for (var board : openSeries.boards()) {
            boolean demo = invented.contains(board.series().id());
            String key = demo ? "statistics.csv.demo" : "statistics.csv.episode";
            for (var episode : board.episodes()) {
                var title = Message.of(key, board.series().title(), episode.number(), episode.title());
                titles.put(episode.id(), reader.say(title));
            }
        }
        return titles;
    }
}
