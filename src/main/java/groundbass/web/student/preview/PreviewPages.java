package groundbass.web.student.preview;

import groundbass.audience.student.PreviewLink;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.EducatorId;
import groundbass.release.BuildState;
import groundbass.release.Release;
import groundbass.release.request.StemsOnRequest;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.SecurityHeaders;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.file.ExactSound;
import groundbass.web.student.file.OfferedFile;
import groundbass.web.student.lesson.EpisodeView;
import groundbass.web.student.lesson.Ways;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A lesson before it is out, exactly as its page will be: for its educator, and for whom they give a private link.
 * Nothing here is recorded, kept by caches between, or found by search engines.
 */
public final class PreviewPages implements PageGroup {
    private static final String OWN = "/preview/{release}";
    private static final String SHARED = "/look/{token}";
    private static final List<Integer> DAYS = List.of(2, 7, 30);
    private static final String SOON = "3";

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final RateLimits limits;
    private final Previews previews;
    private final PreviewLinks links;
    private final ExactSound exact;

    public PreviewPages(
            Pages pages,
            AccessFilter accessFilter,
            RateLimits limits,
            Previews previews,
            PreviewLinks links,
            ExactSound exact) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.limits = limits;
        this.previews = previews;
        this.links = links;
        this.exact = exact;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(OWN, Role.EDUCATOR, this::own);
        routes.get(OWN + "/files/{name}", Role.EDUCATOR, ctx -> take(ctx, owned(ctx)));
        routes.get(OWN + "/play/{name}", Role.EDUCATOR, ctx -> play(ctx, owned(ctx)));
        routes.post(OWN + "/links", Role.EDUCATOR, this::share);
        routes.get(OWN + "/links", Role.EDUCATOR, ctx -> back(ctx, owned(ctx)));
        routes.post(OWN + "/links/{id}/withdraw", Role.EDUCATOR, this::withdraw);
        routes.get(SHARED, Role.ANYONE, this::shared);
        routes.get(SHARED + "/files/{name}", Role.ANYONE, ctx -> take(ctx, opened(ctx)));
        routes.get(SHARED + "/play/{name}", Role.ANYONE, ctx -> play(ctx, opened(ctx)));
    }

    private void own(Context ctx) {
        var release = owned(ctx);
        if (!release.isReady()) {
            unfinished(ctx, release);
            return;
        }
        var rows = links.of(release.id().value()).stream().map(LinkRow::of).toList();
        show(ctx, release, Optional.of(new Owner(desk(release), path(release), rows, DAYS)), Optional.empty());
    }

    private void unfinished(Context ctx, Release release) {
        unseen(ctx);
        boolean failed = release.isFailed();
        if (!failed) {
            ctx.header("Refresh", SOON); // WHATWG HTML, section "The `Refresh` header"
        }
        var state = release.state();
        int done = state instanceof BuildState.Building building ? building.done() : 0;
        int total = state instanceof BuildState.Building building ? building.total() : 0;
        var cause = state instanceof BuildState.Failed broken
                ? Optional.of(pages.reader(ctx).say(broken.cause().message()))
                : Optional.<String>empty();
        pages.show(ctx, "student/preview-wait", new Waiting(desk(release), done, total, cause));
    }

    private void shared(Context ctx) {
        var link = link(ctx);
        var release = previews.find(link.release()).filter(Release::isReady).orElseThrow(NotFoundResponse::new);
        show(ctx, release, Optional.empty(), Optional.of(link.expiresAt()));
    }

    private void show(Context ctx, Release release, Optional<Owner> owner, Optional<Instant> until) {
        unseen(ctx);
        previews.video(release).ifPresent(video -> SecurityHeaders.allowFrame(ctx, video.origin()));
        var lesson = previews.lesson(release, pages.reader(ctx), Ways.below(ctx.path()));
        pages.show(ctx, "student/preview", new View(lesson, owner, until));
    }

    private void share(Context ctx) {
        var release = owned(ctx);
        String reader = Optional.ofNullable(ctx.formParam("reader")).orElse("").strip();
        int days = Optional.ofNullable(ctx.formParam("days"))
                .filter(text -> text.matches("[0-9]{1,2}"))
                .map(Integer::valueOf)
                .filter(DAYS::contains)
                .orElse(DAYS.get(0));
        var token = links.make(educator(ctx), release.id().value(), reader, Duration.ofDays(days));
        unseen(ctx);
        var address = pages.address("/look/" + token.value()).toString();
        pages.show(ctx, "student/preview-link", new Made(address, path(release), days));
    }

    private void withdraw(Context ctx) {
        var release = owned(ctx);
        links.withdraw(educator(ctx), release.id().value(), ctx.pathParam("id"));
        Flash.say(ctx, "preview.withdrawn");
        back(ctx, release);
    }

    private void back(Context ctx, Release release) {
        ctx.redirect(path(release), HttpStatus.SEE_OTHER);
    }

    private void take(Context ctx, Release release) throws IOException {
        limits.demand(ctx, Limit.DOWNLOAD);
        unseen(ctx);
        previews.file(release, ctx.pathParam("name"))
                .filter(OfferedFile::offered)
                .map(previews::takenHome)
                .orElseThrow(NotFoundResponse::new)
                .send(ctx);
    }

    private void play(Context ctx, Release release) throws IOException {
        limits.demand(ctx, Limit.PLAY);
        unseen(ctx);
        played(ctx, release, ctx.pathParam("name"))
                .orElseThrow(NotFoundResponse::new)
                .send(ctx);
    }

    private Optional<FileAnswer> played(Context ctx, Release release, String name) {
        return StemsOnRequest.makes(name)
                ? exact.of(ctx, release, name).map(previews::played)
                : previews.file(release, name).filter(OfferedFile::playable).map(previews::played);
    }

    /** The release of the address, where it is a lesson of whoever is signed in; 404 for all others. */
    private Release owned(Context ctx) {
        return previews.find(ctx.pathParam("release"))
                .filter(release -> previews.isOf(educator(ctx), release))
                .orElseThrow(NotFoundResponse::new);
    }

    private Release opened(Context ctx) {
        return previews.find(link(ctx).release()).filter(Release::isReady).orElseThrow(NotFoundResponse::new);
    }

    private PreviewLink link(Context ctx) {
        return links.find(new SecretToken(ctx.pathParam("token"))).orElseThrow(NotFoundResponse::new);
    }

    private EducatorId educator(Context ctx) {
        return accessFilter.principal(ctx).educator().orElseThrow();
    }

    private static void unseen(Context ctx) {
        ctx.header("X-Robots-Tag", "noindex, nofollow");
    }

    private static String path(Release release) {
        return "/preview/" + release.id();
    }

    private static String desk(Release release) {
        return "/desk/episodes/" + release.episode();
    }

    /**
     * The lesson's page with a note above it.
     *
     * @param owner for the educator: what they can do about it
     * @param until for the reader of a private link: how long it works
     */
    public record View(EpisodeView lesson, Optional<Owner> owner, Optional<Instant> until) {}

    /** @param desk where the lesson is written; {@code days} how long a link may last */
    public record Owner(String desk, String path, List<LinkRow> links, List<Integer> days) {}

    /** A link that works. */
    public record LinkRow(String id, String reader, Instant until) {
        static LinkRow of(PreviewLink link) {
            return new LinkRow(link.id(), link.reader(), link.expiresAt());
        }
    }

    /** While the files are made, or where they could not be. */
    public record Waiting(String desk, int done, int total, Optional<String> failure) {}

    /** The address of a new link, which is shown this once. */
    public record Made(String address, String back, int days) {}
}
