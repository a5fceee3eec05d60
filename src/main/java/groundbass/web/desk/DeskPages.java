package groundbass.web.desk;

import groundbass.audience.BrowserMark;
import groundbass.audience.Sessions;
import groundbass.catalog.Educators;
import groundbass.catalog.EpisodeDesk;
import groundbass.catalog.Episodes;
import groundbass.catalog.Recordings;
import groundbass.catalog.SeriesCatalog;
import groundbass.catalog.Settings;
import groundbass.catalog.Uploads;
import groundbass.effort.Budget;
import groundbass.effort.Turns;
import groundbass.post.Outbox;
import groundbass.publishing.Publisher;
import groundbass.release.BrokenFiles;
import groundbass.release.Releases;
import groundbass.web.shell.Chosen;
import groundbass.web.shell.Doorkeeper;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.RateLimits;
import groundbass.web.shell.SessionCookie;
import java.time.Clock;
import java.time.Duration;
import java.util.List;

/** The desk's page groups, and what they need. */
public final class DeskPages {
    private DeskPages() {}

    /** What belongs to every page. */
    public record Shell(
            Pages pages,
            Installation installation,
            Doorkeeper doorkeeper,
            SessionCookie cookie,
            RateLimits limits,
            Chosen chosen) {}

    /** What the desk works with. */
    public record Services(
            Educators educators,
            Sessions sessions,
            BrowserMark browserMark,
            SeriesCatalog catalog,
            Episodes episodes,
            EpisodeDesk writing,
            Uploads uploads,
            Recordings recordings,
            Releases releases,
            BrokenFiles brokenFiles,
            Publisher publisher,
            Outbox outbox,
            Settings settings,
            Clock clock) {}

    /**
     * Two drawings at once use up neither the heap nor all processors of a small machine. An educator who writes without
     * a pause needs a small part of that time.
     */
    private static Budget budget(Clock clock) {
        var machine = new Turns(2, 12, Duration.ofSeconds(4));
        return new Budget(machine, 4, Duration.ofSeconds(120), Duration.ofMinutes(5), clock);
    }

    public static List<PageGroup> of(Shell shell, Services services) {
        var desk = new Desk(
                shell.pages(),
                shell.doorkeeper(),
                services.catalog(),
                services.episodes(),
                services.settings(),
                budget(services.clock()));
        var browser =
                new KnownBrowser(services.browserMark(), shell.installation().secure());
        var entrance = new Entrance(services.educators(), services.sessions(), shell.cookie(), browser, shell.limits());
        var editor = new Editor(
                desk,
                services.writing(),
                services.uploads(),
                services.recordings(),
                services.releases(),
                services.clock());
        var carried = new Carried(desk, entrance);
        var saving = new Saving(desk, carried, services.writing(), services.uploads(), editor);
        return List.of(
                new SignInPages(shell.pages(), services.educators(), entrance),
                new AccountPages(desk, services.educators(), entrance),
                new OverviewPage(
                        desk,
                        services.catalog(),
                        services.episodes(),
                        services.releases(),
                        services.outbox(),
                        services.brokenFiles()),
                new SeriesPages(desk, services.catalog(), services.writing(), shell.chosen()),
                new LetterPages(desk, services.settings()),
                new EditorPages(desk, editor, saving),
                new LinePages(desk, new LineSound(shell.limits())),
                new DraftPages(desk, editor, saving, services.writing()),
                new PublishingPages(desk, editor, saving, services.publisher()),
                new TrackPages(desk, editor, services.writing(), services.uploads(), shell.limits()),
                new RecordingPages(desk, services.writing(), services.uploads(), services.recordings()),
                new WalkthroughPages(desk, carried, services.writing()),
                new ScriptPages(desk, carried, services.writing()),
                new FactsPages(desk, carried, services.writing()),
                new OutboxPages(desk, services.outbox(), services.educators(), services.settings(), services.clock()),
                new SettingsPages(desk, services.settings(), shell.chosen()));
    }
}
