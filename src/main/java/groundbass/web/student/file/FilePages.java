package groundbass.web.student.file;

import groundbass.audience.download.Downloads;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.SiteSettings;
import groundbass.release.FileRole;
import groundbass.release.WantedTrack;
import groundbass.release.request.StemsOnRequest;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.visit.Requesters;
import io.javalin.http.Context;
import io.javalin.http.GoneResponse;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The files of releases: to take home, each GET recorded, or to be played on the page. A name from an address is only
 * ever compared with rows; the place on the disk comes from the row.
 */
public final class FilePages implements PageGroup {
    private final OfferedFiles files;
    private final Downloads downloads;
    private final AccessFilter accessFilter;
    private final RateLimits limits;
    private final Installation installation;
    private final Supplier<SiteSettings> settings;
    private final TakeCookie cookie;
    private final Manifests manifests;
    private final ReleaseAnswers answers;
    private final ExactSound exact;

    public FilePages(
            OfferedFiles files,
            Downloads downloads,
            AccessFilter accessFilter,
            RateLimits limits,
            Installation installation,
            Supplier<SiteSettings> settings,
            Manifests manifests,
            ReleaseAnswers answers,
            ExactSound exact) {
        this.files = files;
        this.downloads = downloads;
        this.accessFilter = accessFilter;
        this.limits = limits;
        this.installation = installation;
        this.settings = settings;
        this.cookie = new TakeCookie(installation.secure());
        this.manifests = manifests;
        this.answers = answers;
        this.exact = exact;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/files/{release}/{name}", Role.ANYONE, this::take);
        routes.get("/files/{release}", Role.ANYONE, this::choose);
        routes.get("/play/{release}/{name}", Role.ANYONE, this::play);
    }

    /** The form for a practice track of one's own choice leads to its file, which is made when it is first asked for. */
    private void choose(Context ctx) {
        var chosen = TrackForm.of(ctx::queryParam).orElseThrow(NotFoundResponse::new);
        ctx.redirect("/files/" + ctx.pathParam("release") + "/" + chosen.name(), HttpStatus.SEE_OTHER);
    }

    private void take(Context ctx) throws IOException {
        limits.demand(ctx, Limit.DOWNLOAD);
        var file = find(ctx);
        if (file.isEmpty() && ctx.method().equals(HandlerType.GET)) {
            takeNew(ctx);
        } else {
            take(ctx, file.filter(OfferedFile::offered).orElseThrow(NotFoundResponse::new));
        }
    }

    /** A practice track is made for whoever may have it, and for nobody else: it costs seconds of the machine. */
    private void takeNew(Context ctx) throws IOException {
        String name = ctx.pathParam("name");
        var release = files.making(ctx.pathParam("release"))
                .filter(found -> WantedTrack.named(name).isPresent())
                .orElseThrow(NotFoundResponse::new);
        demandOut(release.episode());
        if (isToSignIn(ctx)) {
            askToSignIn(ctx, release.episode(), name);
            return;
        }
        limits.demand(ctx, Limit.TRACK);
        take(ctx, files.made(release, name).orElseThrow(NotFoundResponse::new));
    }

    private void take(Context ctx, OfferedFile file) throws IOException {
        if (isToSignIn(ctx)) {
            askToSignIn(ctx, file.episode(), file.file().name());
            return;
        }
        boolean shown = file.readable() && ctx.queryParam("open") != null;
        var answer = shown
                ? answer(file).withShownName(file.downloadName())
                : answer(file).withDownloadName(file.downloadName());
        answer.withTransfer(transfer(ctx, file)).send(ctx);
    }

    private boolean isToSignIn(Context ctx) {
        return settings.get().downloadsNeedSignIn()
                && accessFilter.principal(ctx).isNobody();
    }

    private RecordedTransfer transfer(Context ctx, OfferedFile file) {
        var requester = Requesters.of(ctx, accessFilter.principal(ctx));
        return new RecordedTransfer(downloads, file.released(), requester, cookie, ctx);
    }

    /** Back to the lesson: coming back to the file itself would leave the reader on the page of the link. */
    private static void askToSignIn(Context ctx, EpisodeId episode, String name) {
        AccessFilter.sendToSignIn(ctx, Role.STUDENT, "/e/" + episode + "?wanted=" + name);
    }

    private void play(Context ctx) throws IOException {
        limits.demand(ctx, Limit.PLAY);
        if (StemsOnRequest.makes(ctx.pathParam("name"))) {
            playExact(ctx);
            return;
        }
        var file = find(ctx).filter(OfferedFile::playable).orElseThrow(NotFoundResponse::new);
        if (file.offered() && settings.get().downloadsNeedSignIn()) {
            playWhole(ctx, file);
        } else if (file.file().role() == FileRole.PLAY) {
            manifests.of(file.file()).send(ctx, CachedResponse.FOR_GOOD);
        } else {
            answer(file).withCacheControl(CachedResponse.FOR_GOOD).send(ctx);
        }
    }

    private void playExact(Context ctx) throws IOException {
        var release = files.out(ctx.pathParam("release")).orElseThrow(NotFoundResponse::new);
        demandOut(release.episode());
        var stem = exact.of(ctx, release, ctx.pathParam("name")).orElseThrow(NotFoundResponse::new);
        if (stem.file().role() == FileRole.PLAY) {
            // a later program may make it otherwise
            manifests.of(stem.file(), stem.files()).send(ctx, CachedResponse.ASK_AGAIN);
        } else {
            ExactSound.answer(stem).withCacheControl(CachedResponse.FOR_GOOD).send(ctx);
        }
    }

    /** A whole recording is a file to take home, wherever it is played: where that needs a sign-in, so does this. */
    private void playWhole(Context ctx, OfferedFile file) throws IOException {
        if (isToSignIn(ctx)) {
            askToSignIn(ctx, file.episode(), file.file().name());
            return;
        }
        answer(file).withTransfer(transfer(ctx, file)).send(ctx);
    }

    private Optional<OfferedFile> find(Context ctx) {
        var file = files.find(ctx.pathParam("release"), ctx.pathParam("name"));
        file.ifPresent(found -> demandOut(found.episode()));
        return file;
    }

    private void demandOut(EpisodeId episode) {
        if (!files.isOut(episode)) {
            throw new GoneResponse(); // RFC 9110 section 15.5.11
        }
    }

    private FileAnswer answer(OfferedFile offered) throws IOException {
        return answers.of(offered.release(), offered.file()).withHandOver(installation.handOver());
    }
}
