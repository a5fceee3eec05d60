package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.release.Release;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.visit.VisitCounter;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;

/** Hears from a lesson's page, when it is left, what was played on it. The page has gone by then and reads no answer. */
public final class SittingPage implements PageGroup {
    private final Lessons lessons;
    private final ReleaseContents contents;
    private final VisitCounter visits;
    private final RateLimits limits;

    public SittingPage(Lessons lessons, ReleaseContents contents, VisitCounter visits, RateLimits limits) {
        this.lessons = lessons;
        this.contents = contents;
        this.visits = visits;
        this.limits = limits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post("/e/{id}/sitting", Role.ANYONE, this::hear);
    }

    /** Where a page that shows this release tells. */
    static String path(Episode episode, Release release) {
        return "/e/" + episode.id() + "/sitting?release=" + release.spec().release();
    }

    private void hear(Context ctx) {
        limits.demand(ctx, Limit.SITTING);
        var lesson = EpisodeId.parse(ctx.pathParam("id")).flatMap(lessons::out).orElseThrow(NotFoundResponse::new);
        count(ctx, lesson);
        ctx.status(HttpStatus.NO_CONTENT);
    }

    private void count(Context ctx, Episode lesson) {
        lessons.release(lesson.id())
                .ifPresent(release -> contents.page(release.id()).ifPresent(content -> {
                    var form = new SittingForm(content, shown(ctx, release));
                    visits.sat(ctx, lesson, form.read(ctx.formParams("played"), ctx.formParams("course")));
                }));
    }

    /** The release that the page showed; one that there is not yet is made up, and nobody says more than the latest. */
    private static int shown(Context ctx, Release latest) {
        int number = latest.spec().release();
        return Optional.ofNullable(ctx.queryParam("release"))
                .filter(text -> text.matches("[1-9][0-9]{0,3}"))
                .map(Integer::valueOf)
                .filter(said -> said <= number)
                .orElse(number);
    }
}
