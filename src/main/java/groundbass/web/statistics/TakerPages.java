package groundbass.web.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.statistics.StudentUse;
import groundbass.audience.student.DemoAddress;
import groundbass.audience.student.Student;
import groundbass.audience.student.StudentId;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.statistics.OpenSeries.Lesson;
import groundbass.web.view.PageOf;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;

/** Who took something of the lessons that are open to this educator, and of each what and when. */
final class TakerPages implements PageGroup {
    /** Students on a page. */
    private static final int SHOWN = 100;

    private final StatisticsServices services;

    TakerPages(StatisticsServices services) {
        this.services = services;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics/students", Role.EDUCATOR, this::list);
        routes.get("/desk/statistics/students/{id}", Role.EDUCATOR, this::one);
    }

    private void list(Context ctx) {
        var page = Turned.to(ctx, SHOWN);
        // one more than is shown tells whether another page follows
        var uses = services.statistics().students(services.taken(ctx), page.skipped(), SHOWN + 1);
        if (uses.isEmpty() && page.number() > 1) {
            throw new NotFoundResponse();
        }
        var entries = uses.stream().limit(SHOWN).map(Entry::of).toList();
        boolean demo = uses.stream()
                .anyMatch(use -> DemoAddress.isInvented(use.student().email()));
        services.pages()
                .show(ctx, "statistics/students", new Everyone(demo, entries, page.turning(uses.size() > SHOWN)));
    }

    private void one(Context ctx) {
        var openSeries = services.takenSeries(ctx);
        var found = Found.in(services, openSeries, ctx.pathParam("id"));
        var reader = services.pages().reader(ctx);
        var lessons = openSeries.lessons();
        var rows = found.downloads().stream()
                .map(download -> line(download, lessons.get(download.file().episode()), reader))
                .toList();
        var email = found.student().email();
        var view = new One(ctx.path(), email.value(), DemoAddress.isInvented(email), rows);
        services.pages().show(ctx, "statistics/student", view);
    }

    private static Line line(Download download, Lesson lesson, Reader reader) {
        var row = TakenRow.of(download, Optional.empty(), Days.of(reader, lesson.zone()));
        return new Line(
                "/desk/statistics/episodes/" + lesson.episode().id(),
                lesson.episode().title(),
                lesson.series().title(),
                row);
    }

    /** A student with what they took of one educator's lessons, the latest first. */
    record Found(Student student, List<Download> downloads) {
        /** 404 where there is no such student, and as well where they took nothing of this shelf. */
        static Found in(StatisticsServices services, OpenSeries openSeries, String id) {
            return StudentId.parse(id)
                    .flatMap(services.students()::find)
                    .map(student -> new Found(
                            student, openSeries.among(services.statistics().ofStudent(student.id()))))
                    .filter(found -> !found.downloads().isEmpty())
                    .orElseThrow(NotFoundResponse::new);
        }
    }

    /** What the list of students shows; {@code demo} where some of them are invented. */
    public record Everyone(boolean demo, List<Entry> students, PageOf.Turning turning) {}

    /** A student in the list. */
    public record Entry(String path, String email, StudentUse use) {
        static Entry of(StudentUse use) {
            var student = use.student();
            return new Entry(TakenRow.path(student.id()), student.email().value(), use);
        }
    }

    /** What a student's page shows; {@code demo} where they are invented. */
    public record One(String path, String email, boolean demo, List<Line> downloads) {}

    /** A download with the lesson that it is of. */
    public record Line(String path, String title, String series, TakenRow row) {}
}
