package groundbass.web.student.file;

import groundbass.audience.download.Downloads;
import groundbass.catalog.settings.SiteSettings;
import groundbass.release.Bundles;
import groundbass.release.FileRole;
import groundbass.release.zip.ZipPiece;
import groundbass.store.Blobs;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.EntityTag;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Principal;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.visit.Requesters;
import io.javalin.http.Context;
import io.javalin.http.GoneResponse;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The files of releases: to take home, each GET recorded, or to be played on the page. A name from an address is only
 * ever compared with rows; the place on the disk comes from the row.
 */
public final class FilePages implements PageGroup {
    private final OfferedFiles files;
    private final Blobs blobs;
    private final Downloads downloads;
    private final AccessFilter accessFilter;
    private final RateLimits limits;
    private final Installation installation;
    private final Supplier<SiteSettings> settings;
    private final TakeCookie cookie;
    private final Manifests manifests;
    private final Bundles bundles;

    public FilePages(
            OfferedFiles files,
            Blobs blobs,
            Downloads downloads,
            AccessFilter accessFilter,
            RateLimits limits,
            Installation installation,
            Supplier<SiteSettings> settings,
            Manifests manifests,
            Bundles bundles) {
        this.files = files;
        this.blobs = blobs;
        this.downloads = downloads;
        this.accessFilter = accessFilter;
        this.limits = limits;
        this.installation = installation;
        this.settings = settings;
        this.cookie = new TakeCookie(installation.secure());
        this.manifests = manifests;
        this.bundles = bundles;
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
        var file = find(ctx).filter(OfferedFile::offered).orElseThrow(NotFoundResponse::new);
        var principal = accessFilter.principal(ctx);
        if (settings.get().downloadsNeedSignIn() && principal.equals(Principal.UNKNOWN)) {
            askToSignIn(ctx, file);
            return;
        }
        var transfer = new RecordedTransfer(downloads, file.released(), Requesters.of(ctx, principal), cookie, ctx);
        boolean shown = file.readable() && ctx.queryParam("open") != null;
        var answer = shown
                ? answer(file).withShownName(file.downloadName())
                : answer(file).withDownloadName(file.downloadName());
        answer.withTransfer(transfer).send(ctx);
    }

    /** Back to the lesson: coming back to the file itself would leave the reader on the page of the link. */
    private static void askToSignIn(Context ctx, OfferedFile file) {
        AccessFilter.sendToSignIn(
                ctx,
                Role.STUDENT,
                "/e/" + file.episode() + "?wanted=" + file.file().name());
    }

    private void play(Context ctx) throws IOException {
        limits.demand(ctx, Limit.PLAY);
        var file = find(ctx).filter(OfferedFile::playable).orElseThrow(NotFoundResponse::new);
        if (file.offered() && settings.get().downloadsNeedSignIn()) {
            playWhole(ctx, file);
        } else if (file.file().role() == FileRole.PLAY) {
            manifests.of(file.file()).send(ctx, CachedResponse.FOR_GOOD);
        } else {
            answer(file).withCacheControl(CachedResponse.FOR_GOOD).send(ctx);
        }
    }

    /** A whole recording is a file to take home, wherever it is played: where that needs a sign-in, so does this. */
    private void playWhole(Context ctx, OfferedFile file) throws IOException {
        var principal = accessFilter.principal(ctx);
        if (principal.equals(Principal.UNKNOWN)) {
            askToSignIn(ctx, file);
            return;
        }
        var transfer = new RecordedTransfer(downloads, file.released(), Requesters.of(ctx, principal), cookie, ctx);
        answer(file).withTransfer(transfer).send(ctx);
    }

    private Optional<OfferedFile> find(Context ctx) {
        var file = files.find(ctx.pathParam("release"), ctx.pathParam("name"));
        if (file.isPresent() && !files.isOut(file.get())) {
            throw new GoneResponse(); // RFC 9110 section 15.5.11
        }
        return file;
    }

    private FileAnswer answer(OfferedFile offered) throws IOException {
        var file = offered.file();
        if (file.role() == FileRole.ZIP) {
            return FileAnswer.joined(
                    pieces(offered),
                    file.mediaType(),
                    new EntityTag(file.sha256().hex()));
        }
        return FileAnswer.of(blobs, file.sha256(), file.mediaType()).withHandOver(installation.handOver());
    }

    private List<FileAnswer> pieces(OfferedFile zip) throws IOException {
        var answers = new ArrayList<FileAnswer>();
        for (var piece : bundles.pieces(zip.release())) {
            if (piece instanceof ZipPiece.Head head) {
                answers.add(FileAnswer.of(head.bytes(), zip.file().mediaType(), new EntityTag("head")));
            } else if (piece instanceof ZipPiece.Content content) {
                answers.add(FileAnswer.of(blobs, content.sha256(), zip.file().mediaType()));
            }
        }
        return answers;
    }
}
