package groundbass.web.desk.site;

import groundbass.archive.ArchiveImport;
import groundbass.archive.BroughtIn;
import groundbass.archive.SeriesExport;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/**
 * Takes a series along as one file, and brings one in. Both read and write much, so few are under way at a time. What was
 * sent is kept for a day, so that whoever has to choose another address need not send it again.
 */
public final class ArchivePages implements PageGroup {
    private static final String TAKE = "/desk/series/{id}/archive";
    private static final String BRING = "/desk/bring-in";
    private static final int AT_ONCE = 2;

    private final DeskContext desk;
    private final SeriesExport exporting;
    private final ArchiveImport importing;
    private final Blobs blobs;
    private final Audit audit;
    private final RateLimits limits;
    private final Clock clock;
    private final Semaphore free = new Semaphore(AT_ONCE);

    public ArchivePages(
            DeskContext desk,
            SeriesExport exporting,
            ArchiveImport importing,
            Blobs blobs,
            Audit audit,
            RateLimits limits,
            Clock clock) {
        this.desk = desk;
        this.exporting = exporting;
        this.importing = importing;
        this.blobs = blobs;
        this.audit = audit;
        this.limits = limits;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(TAKE, Role.EDUCATOR, ctx -> showTake(ctx, false));
        routes.post(TAKE, Role.EDUCATOR, this::take);
        routes.get(BRING, Role.TEACHER, ctx -> desk.pages().show(ctx, "desk/bring-in", BringView.BLANK));
        routes.postArchives(BRING, Role.TEACHER, this::bring);
    }

    // --- out

    private void showTake(Context ctx, boolean busy) {
        var series = desk.series(ctx, Deed.KEEP);
        desk.pages()
                .show(
                        ctx,
                        "desk/take-along",
                        new TakeView(series.title(), "/desk/series/" + series.id() + "/archive", busy));
    }

    private void take(Context ctx) throws IOException {
        var series = desk.series(ctx, Deed.KEEP);
        if (!free.tryAcquire()) {
            ctx.status(HttpStatus.SERVICE_UNAVAILABLE);
            showTake(ctx, true);
            return;
        }
        try {
            audit.note(
                    desk.educator(ctx).value(),
                    AuditWord.SERIES_EXPORTED,
                    series.id().value());
            send(ctx, series);
        } finally {
            free.release();
        }
    }

    private void send(Context ctx, Series series) throws IOException {
        var day = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"" + series.slug() + "-" + day + ".zip\"");
        ctx.contentType("application/zip");
        exporting.writeTo(series, ctx.outputStream());
    }

    // --- in

    private void bring(Context ctx) throws IOException {
        var who = desk.educator(ctx);
        limits.demand(ctx, Limit.UPLOAD, "educator " + who);
        String address = FormParameters.text(ctx, "address").strip();
        var kept = kept(ctx);
        if (kept.isEmpty()) {
            showAgain(ctx, Optional.empty(), address, List.of(FieldProblem.of("file", "catalog.problem.missing")));
        } else if (!free.tryAcquire()) {
            showAgain(ctx, kept, address, List.of(FieldProblem.of("file", "desk.bring-in.busy")));
            ctx.status(HttpStatus.SERVICE_UNAVAILABLE);
        } else {
            try {
                answer(ctx, kept.get(), address, bringIn(who, kept.get(), address));
            } finally {
                free.release();
            }
        }
    }

    /** What was sent now, else what was sent before and is still here. */
    private Optional<Sha256> kept(Context ctx) throws IOException {
        var part = ctx.uploadedFile("file");
        if (part == null || part.filename().isBlank()) {
            return Sha256.parse(FormParameters.text(ctx, "kept"));
        }
        try (var in = part.content()) {
            return blobs.put(in, Routes.MOST_OF_AN_ARCHIVE).map(Blob::sha256);
        }
    }

    private Outcome<BroughtIn> bringIn(EducatorId who, Sha256 kept, String address) throws IOException {
        try (var file = blobs.local(kept)) {
            return importing.bringIn(who, file.path(), address);
        } catch (NoSuchFileException e) {
            return Outcome.refused("file", "catalog.problem.missing");
        }
    }

    private void answer(Context ctx, Sha256 kept, String address, Outcome<BroughtIn> outcome) {
        if (outcome.result().isPresent()) {
            desk.pages()
                    .show(ctx, "desk/bring-in", BringView.of(outcome.result().get()));
            return;
        }
        boolean again = outcome.problems().stream().allMatch(ArchivePages::isOfNoFile);
        showAgain(ctx, again ? Optional.of(kept) : Optional.empty(), address, outcome.problems());
    }

    /** Whether the same file may come in once something else is in order. */
    private static boolean isOfNoFile(FieldProblem problem) {
        return problem.field().equals("address") || problem.key().equals("archive.problem.imprint");
    }

    private void showAgain(Context ctx, Optional<Sha256> kept, String address, List<FieldProblem> problems) {
        var view =
                new BringView(kept.map(Sha256::hex).orElse(""), address, new FieldProblems(problems), Optional.empty());
        desk.pages().showAgain(ctx, "desk/bring-in", view);
    }

    /** @param path where the form goes */
    public record TakeView(String series, String path, boolean busy) {}

    /**
     * @param kept names what was sent before; empty where a file has to be chosen
     * @param brought what came in
     */
    public record BringView(String kept, String address, FieldProblems problems, Optional<BroughtIn> brought) {
        static final BringView BLANK = new BringView("", "", FieldProblems.NONE, Optional.empty());

        static BringView of(BroughtIn brought) {
            return new BringView("", "", FieldProblems.NONE, Optional.of(brought));
        }
    }
}
