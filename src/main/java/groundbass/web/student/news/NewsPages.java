package groundbass.web.student.news;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.NewsRequests;
import groundbass.audience.student.LinkState;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Students;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.settings.SiteSettings;
import groundbass.form.FieldProblem;
import groundbass.identity.Slug;
import groundbass.post.EmailAddress;
import groundbass.post.Postman;
import groundbass.text.Message;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Asking for news with an address, without an account. A letter's link shows a button, and only the button agrees,
 * because mail scanners open what is mailed. Ending it is one press, or one request of a mail program (RFC 8058), signed
 * in or not.
 */
public final class NewsPages implements PageGroup {
    private static final String ASK = "/series/{slug}/news";
    private static final String END = "/news/end/{token}";

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final Students students;
    private final SeriesCatalog catalog;
    private final NewsRequests requests;
    private final NewsReaders readers;
    private final Supplier<SiteSettings> settings;
    private final RateLimits limits;
    private final Optional<Postman> toDesk;

    /** @param toDesk where no letter leaves: who lays it on the desk, so that it is read there at once */
    public NewsPages(
            Pages pages,
            AccessFilter accessFilter,
            Students students,
            SeriesCatalog catalog,
            NewsRequests requests,
            NewsReaders readers,
            Supplier<SiteSettings> settings,
            RateLimits limits,
            Optional<Postman> toDesk) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.students = students;
        this.catalog = catalog;
        this.requests = requests;
        this.readers = readers;
        this.settings = settings;
        this.limits = limits;
        this.toDesk = toDesk;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(ASK, Role.ANYONE, this::form);
        routes.post(ASK, Role.ANYONE, this::ask);
        routes.get(
                "/news/sent", Role.ANYONE, ctx -> pages.show(ctx, "student/news-sent", new Sent(onTheDesk(), hours())));
        routes.get("/news/{token}", Role.ANYONE, this::show);
        routes.post("/news/{token}", Role.ANYONE, this::agree);
        routes.get(END, Role.ANYONE, this::askToEnd);
        routes.post(END, Role.EXEMPT, this::end);
    }

    /** A series of which nothing is out is nobody's to know of. */
    private Series series(Context ctx) {
        return Slug.parse(ctx.pathParam("slug")).flatMap(catalog::published).orElseThrow(NotFoundResponse::new);
    }

    /** Whoever is signed in need not type their address again. */
    private void form(Context ctx) {
        String email = accessFilter
                .principal(ctx)
                .student()
                .flatMap(students::find)
                .map(student -> student.email().value())
                .orElse("");
        pages.show(ctx, "student/news", form(series(ctx), email, FieldProblems.NONE));
    }

    private Form form(Series series, String email, FieldProblems problems) {
        return new Form(
                series.title(),
                "/series/" + series.slug().value(),
                email,
                settings.get().imprint().guardians(),
                onTheDesk(),
                problems);
    }

    private void ask(Context ctx) {
        var series = series(ctx);
        String typed = Optional.ofNullable(ctx.formParam("email")).orElse("");
        var email = EmailAddress.read(typed);
        if (email.isEmpty()) {
            var problem = typed.isBlank()
                    ? FieldProblem.of("email", "catalog.problem.email.none")
                    : FieldProblem.of("email", "catalog.problem.email", typed.strip());
            pages.showAgain(ctx, "student/news", form(series, typed, new FieldProblems(List.of(problem))));
            return;
        }
        limits.demand(ctx, Limit.LETTERS_OF_NETWORK);
        limits.demand(ctx, Limit.LETTER, email.get().value());
        var reader = pages.reader(ctx);
        String wording = reader.say(Message.of("news.consent", series.title()));
        requests.ask(series, new Ask(series.id(), email.get(), reader.locale(), wording, AskedOn.SERIES));
        toDesk.ifPresent(Postman::deliverDue);
        ctx.redirect("/news/sent", HttpStatus.SEE_OTHER);
    }

    private void show(Context ctx) {
        var state = requests.peek(token(ctx));
        if (state == LinkState.VALID) {
            pages.show(ctx, "student/news-link", new Link(ctx.path(), title(requests.series(token(ctx)))));
        } else {
            refuse(ctx, state);
        }
    }

    private void agree(Context ctx) {
        var series = requests.agree(token(ctx)).flatMap(catalog::find);
        if (series.isPresent()) {
            pages.show(ctx, "student/news-begun", Done.of(series.get()));
        } else {
            refuse(ctx, requests.peek(token(ctx)));
        }
    }

    private void refuse(Context ctx, LinkState state) {
        var why =
                switch (state) {
                    case EXPIRED -> "news.link.expired";
                    case USED -> "news.link.used";
                    case UNKNOWN, VALID -> "news.link.unknown";
                };
        ctx.status(state == LinkState.UNKNOWN ? HttpStatus.NOT_FOUND : HttpStatus.GONE);
        pages.show(
                ctx,
                "student/news-over",
                new Over(
                        why,
                        requests.series(token(ctx))
                                .flatMap(catalog::find)
                                .map(series -> "/series/" + series.slug().value() + "/news")));
    }

    private void askToEnd(Context ctx) {
        var reader = readers.find(ctx.pathParam("token")).orElseThrow(NotFoundResponse::new);
        if (reader.endedAt().isPresent()) {
            showEnded(ctx, reader.series());
        } else {
            pages.show(ctx, "student/news-end", new End(ctx.path(), title(Optional.of(reader.series()))));
        }
    }

    /** Answers by itself: a mail program follows no redirect (RFC 8058 section 3.1). Done twice it is as done once. */
    private void end(Context ctx) {
        var reader = readers.find(ctx.pathParam("token")).orElseThrow(NotFoundResponse::new);
        readers.end(reader.id());
        showEnded(ctx, reader.series());
    }

    private void showEnded(Context ctx, SeriesId id) {
        pages.show(ctx, "student/news-ended", Done.of(catalog.find(id).orElseThrow(NotFoundResponse::new)));
    }

    private String title(Optional<SeriesId> series) {
        return series.flatMap(catalog::find).map(Series::title).orElse("");
    }

    private boolean onTheDesk() {
        return toDesk.isPresent();
    }

    private static long hours() {
        return NewsRequests.VALID.toHours();
    }

    private static SecretToken token(Context ctx) {
        return new SecretToken(ctx.pathParam("token"));
    }

    /** The form; {@code onTheDesk} says that letters do not leave this machine. */
    public record Form(
            String series, String path, String email, String guardians, boolean onTheDesk, FieldProblems problems) {}

    /** What follows, whoever asked. */
    public record Sent(boolean onTheDesk, long hours) {}

    /** The button's page. */
    public record Link(String path, String series) {}

    /** The question before it ends. */
    public record End(String path, String series) {}

    /** What was begun or ended, and the way to the series. */
    public record Done(String series, String path) {
        static Done of(Series series) {
            return new Done(series.title(), "/series/" + series.slug().value());
        }
    }

    /** A link that does not work any more, why (a message's key), and where to ask again. */
    public record Over(String why, Optional<String> again) {}
}
