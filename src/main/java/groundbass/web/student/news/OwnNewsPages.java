package groundbass.web.student.news;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Student;
import groundbass.audience.student.Students;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.text.Message;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UnauthorizedResponse;
import java.util.Optional;

/** A student who is signed in has proven the address: news begins and ends by one press. */
public final class OwnNewsPages implements PageGroup {
    private final Pages pages;
    private final AccessFilter accessFilter;
    private final Students students;
    private final SeriesCatalog catalog;
    private final NewsReaders readers;

    public OwnNewsPages(
            Pages pages, AccessFilter accessFilter, Students students, SeriesCatalog catalog, NewsReaders readers) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.students = students;
        this.catalog = catalog;
        this.readers = readers;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post("/me/news/begin", Role.STUDENT, this::begin);
        routes.post("/me/news/end", Role.STUDENT, this::end);
    }

    private void begin(Context ctx) {
        var student = student(ctx);
        var series = series(ctx).flatMap(catalog::published).orElseThrow(NotFoundResponse::new);
        var reader = pages.reader(ctx);
        String wording = reader.say(Message.of("news.consent", series.title()));
        readers.agree(new Ask(series.id(), student.email(), student.locale(), wording, AskedOn.ACCOUNT));
        back(ctx, "news.begun");
    }

    /** Works for whatever they get news of: it can be ended also where all of the series was taken back. */
    private void end(Context ctx) {
        readers.end(series(ctx).orElseThrow(NotFoundResponse::new), student(ctx).email());
        back(ctx, "news.ended");
    }

    private static void back(Context ctx, String said) {
        Flash.say(ctx, said);
        ctx.redirect("/me#news", HttpStatus.SEE_OTHER);
    }

    private static Optional<SeriesId> series(Context ctx) {
        return Optional.ofNullable(ctx.formParam("series")).flatMap(SeriesId::parse);
    }

    private Student student(Context ctx) {
        return accessFilter.principal(ctx).student().flatMap(students::find).orElseThrow(UnauthorizedResponse::new);
    }
}
