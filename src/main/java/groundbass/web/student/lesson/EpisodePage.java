package groundbass.web.student.lesson;

import groundbass.audience.download.HeldReleases;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.SiteSettings;
import groundbass.identity.Slug;
import groundbass.publishing.ReleaseChanges;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.SecurityHeaders;
import groundbass.web.student.visit.VisitCounter;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * A lesson's page, the same bytes for everyone who reads its language, but for who has just signed in for a file or took
 * an earlier release.
 */
public final class EpisodePage implements PageGroup {
    private static final String WANTED = "wanted";
    /** A place to practise, or the file that was wanted: neither needs more signs. */
    private static final Predicate<String> PLAIN =
            Pattern.compile("[A-Za-z0-9._=&%+-]{1,300}").asMatchPredicate();

    private final Pages pages;
    private final Lessons lessons;
    private final EpisodeViews views;
    private final Supplier<SiteSettings> settings;
    private final AccessFilter accessFilter;
    private final HeldReleases held;
    private final ReleaseChanges changes;
    private final VisitCounter visits;

    public EpisodePage(
            Pages pages,
            Lessons lessons,
            EpisodeViews views,
            Supplier<SiteSettings> settings,
            AccessFilter accessFilter,
            HeldReleases held,
            ReleaseChanges changes,
            VisitCounter visits) {
        this.pages = pages;
        this.lessons = lessons;
        this.views = views;
        this.settings = settings;
        this.accessFilter = accessFilter;
        this.held = held;
        this.changes = changes;
        this.visits = visits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/series/{slug}/{number}", Role.ANYONE, this::episode);
        routes.get("/e/{id}", Role.ANYONE, this::permanent);
    }

    private void episode(Context ctx) {
        var slug = Slug.parse(ctx.pathParam("slug")).orElseThrow(NotFoundResponse::new);
        int number = number(ctx.pathParam("number")).orElseThrow(NotFoundResponse::new);
        var lesson = lessons.lesson(slug, number);
        if (lesson.isPresent()) {
            show(ctx, lesson.get());
            visits.viewed(ctx, lesson.get().episode());
        } else {
            // RFC 9110 section 15.5.11: it was here, and is not, on purpose
            var withdrawn = lessons.withdrawn(slug, number).orElseThrow(NotFoundResponse::new);
            ctx.status(HttpStatus.GONE);
            pages.show(ctx, "student/withdrawn", withdrawn);
        }
    }

    private void show(Context ctx, PublishedLesson lesson) {
        boolean signIn = settings.get().downloadsNeedSignIn();
        String version = lesson.version()
                + views.version(lesson.release())
                + (signIn ? "-sign-in" : "")
                + (visits.isOn() ? "" : "-uncounted");
        views.video(lesson.release()).ifPresent(video -> SecurityHeaders.allowFrame(ctx, video.origin()));
        var older = older(ctx, lesson);
        var own = new ForReader(wanted(ctx), older, older.map(changes::clauses).orElse(List.of()));
        var ways = visits.isOn() ? Ways.PUBLIC : Ways.UNCOUNTED;
        if (own.equals(ForReader.ANYBODY)) {
            pages.showShared(ctx, "student/episode", version, reader -> views.of(lesson, signIn, own, reader, ways));
        } else {
            pages.show(ctx, "student/episode", views.of(lesson, signIn, own, pages.reader(ctx), ways));
        }
    }

    /** Asked only of a lesson that was corrected, and for a reader who is signed in. */
    private Optional<ReleaseChanges.Older> older(Context ctx, PublishedLesson lesson) {
        return lesson.corrected()
                ? accessFilter
                        .principal(ctx)
                        .student()
                        .map(student -> held.of(student, lesson.episode().id()))
                        .flatMap(taken -> changes.since(taken, lesson.release()))
                : Optional.empty();
    }

    /** What is printed, mailed and fed: it leads to wherever the lesson is read today. */
    private void permanent(Context ctx) {
        String path =
                EpisodeId.parse(ctx.pathParam("id")).flatMap(lessons::path).orElseThrow(NotFoundResponse::new);
        String query = Optional.ofNullable(ctx.queryString()).filter(PLAIN).orElse("");
        ctx.redirect(query.isEmpty() ? path : path + "?" + query, HttpStatus.FOUND);
    }

    /** The file for which somebody went away to sign in; it waits for them on the page. */
    private static String wanted(Context ctx) {
        return Optional.ofNullable(ctx.queryParam(WANTED))
                .filter(name -> name.matches("[A-Za-z0-9._-]{1,200}"))
                .orElse("");
    }

    // no leading zeros: a lesson has one address
    private static Optional<Integer> number(String text) {
        return text.matches("[1-9][0-9]{0,5}") ? Optional.of(Integer.valueOf(text)) : Optional.empty();
    }
}
