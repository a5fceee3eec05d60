package groundbass.site;

import groundbass.effort.Budget;
import groundbass.effort.ConcurrencyLimit;
import groundbass.web.WebServer;
import groundbass.web.desk.DeskPages;
import groundbass.web.general.AssetFiles;
import groundbass.web.general.DevicePages;
import groundbass.web.general.GeneralPages;
import groundbass.web.general.HealthPage;
import groundbass.web.general.MetricsPage;
import groundbass.web.program.ProgramPages;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Errors;
import groundbass.web.shell.HostNames;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.RequestTimes;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.SessionPrincipals;
import groundbass.web.shell.limit.SiteLimits;
import groundbass.web.statistics.StatisticsPages;
import groundbass.web.student.StudentPages;
import groundbass.web.student.file.ReleaseAnswers;
import groundbass.web.view.Assets;
import groundbass.web.view.Templates;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The pages, and the one list of all page groups. */
final class Website {
    private final Services services;
    private final Installation installation;
    private final Assets assets = new Assets();
    private final CachedSettings chosen;
    private final Pages pages;
    private final SessionCookie cookie;
    private final AccessFilter accessFilter;
    private final SiteLimits limits;
    private final Budget budget;
    private final ReleaseAnswers answers;

    private Website(Services services, Installation installation) {
        this.services = services;
        this.installation = installation;
        this.chosen = new CachedSettings(services.settings::current, services.clock);
        this.cookie = new SessionCookie(installation);
        this.accessFilter = new AccessFilter(
                new SessionPrincipals(services.audience.sessions, services.educators, services.factors.demand()),
                cookie);
        this.pages = new Pages(new Templates(assets), installation, chosen, accessFilter);
        this.limits = new SiteLimits(services.audience.tries, services.clock);
        this.budget = budget(services.clock);
        this.answers = new ReleaseAnswers(services.blobs, services.making.bundles);
    }

    /**
     * Two drawings at once use up neither the heap nor all processors of a small machine. An educator who writes without
     * a pause needs a small part of that time.
     */
    private static Budget budget(Clock clock) {
        var machine = new ConcurrencyLimit(2, 12, Duration.ofSeconds(4));
        return new Budget(machine, 4, Duration.ofSeconds(120), Duration.ofMinutes(5), clock);
    }

    /** Listens; close what it returns to stop. */
    static WebServer open(
            Config config, int port, Installation installation, Services services, Optional<Metrics> metrics) {
        var site = new Website(services, installation);
        return WebServer.start(
                config.host(),
                port,
                installation,
                new HostNames(installation, site.chosen),
                site.accessFilter,
                new Errors(site.pages),
                site.groups(config, metrics),
                metrics.map(figures -> new RequestTimes(figures.registry())));
    }

    private List<PageGroup> groups(Config config, Optional<Metrics> metrics) {
        var groups = new ArrayList<PageGroup>(List.of(
                new GeneralPages(pages, chosen),
                new HealthPage(services.database, services.blobs, services.clock),
                new AssetFiles(assets),
                new DevicePages(pages, chosen, assets, config.keeping())));
        metrics.ifPresent(figures ->
                groups.add(new MetricsPage(config.metrics().orElseThrow().value(), limits, figures::text)));
        groups.addAll(studentPages(config));
        groups.addAll(deskPages(config));
        groups.addAll(programPages());
        groups.add(new StatisticsPages(
                pages,
                accessFilter,
                services.catalog,
                services.episodes,
                services.audience.statistics,
                services.audience.seriesUse,
                services.audience.visitFigures,
                services.making.releases,
                services.making.index,
                services.blobs,
                () -> chosen.get().countsVisits(),
                services.audience.students,
                services.clock));
        return groups;
    }

    private List<PageGroup> studentPages(Config config) {
        return StudentPages.of(
                new StudentPages.Shell(
                        pages, installation, config.keeping(), chosen, accessFilter, cookie, limits, services.clock),
                new StudentPages.Library(
                        services.catalog,
                        services.episodes,
                        services.revisions,
                        services.making.releases,
                        services.making.seriesReleases,
                        services.making.index,
                        services.publishing.releaseChanges,
                        services.outlooks::of,
                        services.blobs,
                        services.making.tracks,
                        services.making.stems,
                        services.making.bundles,
                        answers),
                new StudentPages.Audience(
                        services.audience.signIns,
                        services.audience.practice,
                        services.audience.questions,
                        services.audience.newsReaders,
                        services.audience.newsRequests,
                        services.audience.leaving,
                        services.audience.sessions,
                        services.audience.students,
                        services.audience.consents,
                        services.audit,
                        services.audience.previewLinks,
                        services.outbox,
                        services.audience.downloads,
                        services.audience.visits,
                        services.audience.heldReleases,
                        services.audience.statistics,
                        config.mail().isPresent(),
                        services.postman));
    }

    private List<PageGroup> deskPages(Config config) {
        return DeskPages.of(
                new DeskPages.Shell(pages, installation, accessFilter, cookie, limits, budget, chosen),
                new DeskPages.Services(
                        services.educators,
                        services.factors,
                        services.audience.sessions,
                        services.audience.access,
                        services.audit,
                        config.mail().isPresent(),
                        services.programs,
                        services.audience.browserMark,
                        services.catalog,
                        services.colleagues,
                        services.audience.invitations,
                        services.audience.partings,
                        services.rhythms,
                        services.outlooks,
                        services.styles,
                        services.episodes,
                        services.seriesRecord,
                        services.desk,
                        services.beginnings,
                        services.uploads,
                        services.recordings,
                        services.takingOut,
                        services.making.releases,
                        services.making.brokenFiles,
                        services.publishing.publisher,
                        services.publishing.timetable,
                        services.publishing.takingBack,
                        services.publishing.bin,
                        services.publishing.watch,
                        services.outbox,
                        services.audience.questions,
                        services.publishing.newsTexts,
                        services.audience.newsReaders,
                        services.audience.newsQueue,
                        services.publishing.announcer,
                        services.settings,
                        services.making.backup,
                        services.archives.exporting(),
                        services.archives.importing(),
                        services.blobs,
                        services.clock));
    }

    private List<PageGroup> programPages() {
        return ProgramPages.of(
                new ProgramPages.Entry(
                        pages,
                        limits,
                        budget,
                        services.educators,
                        services.programs,
                        services.factors.demand(),
                        services.programAnswers,
                        services.audit),
                new ProgramPages.Services(
                        services.catalog,
                        services.episodes,
                        services.desk,
                        services.beginnings,
                        services.uploads,
                        services.uploads.pictures(),
                        services.takingOut,
                        services.making.releases,
                        services.publishing.publisher,
                        services.publishing.takingBack,
                        services.audience.statistics,
                        answers,
                        services.clock));
    }
}
