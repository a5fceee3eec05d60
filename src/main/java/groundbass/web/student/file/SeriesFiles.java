package groundbass.web.student.file;

import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.Requester;
import groundbass.catalog.settings.SiteSettings;
import groundbass.identity.Slug;
import groundbass.release.Bundles;
import groundbass.release.ReleaseFile;
import groundbass.release.Releases;
import groundbass.release.SeriesReleases;
import groundbass.web.answer.CutConnection;
import groundbass.web.gate.Network;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.lesson.Lessons;
import groundbass.web.student.lesson.PublishedSeries;
import groundbass.web.student.lesson.SeriesPage;
import groundbass.web.student.visit.Requesters;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * All lessons of a series in one zip, a folder for each, made while it is sent from the bundles that are kept. Each lesson
 * that is begun is recorded as a download of its bundle; what the reader broke off before is none.
 */
public final class SeriesFiles implements PageGroup {
    private final Lessons lessons;
    private final Releases releases;
    private final SeriesReleases sizes;
    private final Bundles bundles;
    private final Downloads downloads;
    private final AccessFilter accessFilter;
    private final RateLimits limits;
    private final Supplier<SiteSettings> settings;
    private final SeriesPlaces places;

    public SeriesFiles(
            Lessons lessons,
            Releases releases,
            SeriesReleases sizes,
            Bundles bundles,
            Downloads downloads,
            AccessFilter accessFilter,
            RateLimits limits,
            Supplier<SiteSettings> settings,
            Clock clock) {
        this.lessons = lessons;
        this.releases = releases;
        this.sizes = sizes;
        this.bundles = bundles;
        this.downloads = downloads;
        this.accessFilter = accessFilter;
        this.limits = limits;
        this.settings = settings;
        this.places = new SeriesPlaces(clock);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(SeriesPage.bundle("{slug}"), Role.ANYONE, this::take);
    }

    private void take(Context ctx) throws IOException {
        var series = Slug.parse(ctx.pathParam("slug"))
                .flatMap(lessons::series)
                .filter(found -> SeriesPage.isBundled(found, sizes))
                .orElseThrow(NotFoundResponse::new);
        limits.demand(ctx, Limit.SERIES_OF_NETWORK);
        var principal = accessFilter.principal(ctx);
        if (settings.get().downloadsNeedSignIn() && principal.isNobody()) {
            AccessFilter.sendToSignIn(ctx, Role.STUDENT, SeriesPage.path(series.series()));
            return;
        }
        principal.student().ifPresent(student -> limits.demand(ctx, Limit.SERIES, student.value()));
        if (ctx.method() == HandlerType.HEAD) {
            describe(series, ctx);
        } else {
            inTurn(series, Requesters.of(ctx, principal), ctx);
        }
    }

    private static void describe(PublishedSeries series, Context ctx) {
        ctx.header("Cache-Control", "no-store");
        ctx.header("Accept-Ranges", "none"); // RFC 9110 section 14.3
        ctx.header(
                "Content-Disposition",
                "attachment; filename=\"" + series.series().slug() + ".zip\"");
        ctx.contentType("application/zip");
    }

    private void inTurn(PublishedSeries series, Requester requester, Context ctx) throws IOException {
        try (var place = places.enter(Network.of(ctx), () -> CutConnection.of(ctx))) {
            describe(series, ctx); // who finds no place is answered with a page
            write(series, requester, new Watched(ctx.outputStream(), place));
        }
    }

    private void write(PublishedSeries series, Requester requester, OutputStream out) throws IOException {
        var zip = new SeriesZip(series.series().slug().value(), out);
        for (var part : series.parts()) {
            var bundle = bundle(part);
            if (bundle.isPresent()) {
                add(part, bundle.get(), requester, zip);
            }
        }
        zip.finish();
    }

    /** None while a lesson's sound is still to follow. */
    private Optional<ReleaseFile> bundle(PublishedSeries.Part part) {
        return releases.files().of(part.release().id()).stream()
                .filter(file -> file.role().isBundle())
                .findFirst();
    }

    private void add(PublishedSeries.Part part, ReleaseFile bundle, Requester requester, SeriesZip zip)
            throws IOException {
        var taken = OfferedFile.of(part.release(), bundle).released();
        var begun = downloads.begin(new FileRequest(taken, requester, true, Optional.empty()));
        try (var in = bundles.open(part.release().id(), bundle)) {
            zip.add(part.release().spec().fileStem(), in);
        } catch (IOException | RuntimeException e) {
            downloads.brokenOff(begun.id(), ByteSpan.of(0, Math.min(zip.read(), bundle.size() - 1)));
            throw e;
        }
        downloads.sent(begun.id(), ByteSpan.of(0, bundle.size()));
    }

    /** Tells what has gone out. */
    private static final class Watched extends FilterOutputStream {
        private final SeriesPlaces.Place place;

        Watched(OutputStream out, SeriesPlaces.Place place) {
            super(out);
            this.place = place;
        }

        @Override
        public void write(int one) throws IOException {
            out.write(one);
            place.move(1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
            place.move(count);
        }
    }
}
