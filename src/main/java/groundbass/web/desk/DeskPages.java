package groundbass.web.desk;

import groundbass.archive.ArchiveImport;
import groundbass.archive.SeriesExport;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Partings;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.question.Questions;
import groundbass.audience.student.BrowserMark;
import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.Sessions;
import groundbass.backup.Backup;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.educator.SecondFactors;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.SeriesRecord;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Uploads;
import groundbass.effort.Budget;
import groundbass.post.Outbox;
import groundbass.publishing.Announcer;
import groundbass.publishing.Bin;
import groundbass.publishing.HourWatch;
import groundbass.publishing.NewsTexts;
import groundbass.publishing.Publisher;
import groundbass.publishing.TakingBack;
import groundbass.publishing.Timetable;
import groundbass.release.Releases;
import groundbass.release.care.BrokenFiles;
import groundbass.store.Blobs;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.KnownBrowser;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.account.AccountPages;
import groundbass.web.desk.account.AuditPages;
import groundbass.web.desk.account.DeskSessionPages;
import groundbass.web.desk.account.DeskSignInPages;
import groundbass.web.desk.account.FactorDemandPages;
import groundbass.web.desk.account.ForgottenPages;
import groundbass.web.desk.account.ProgramTokenPages;
import groundbass.web.desk.account.SecondFactorPages;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.desk.calendar.WeeksPage;
import groundbass.web.desk.editor.EditorPages;
import groundbass.web.desk.editor.FormerPages;
import groundbass.web.desk.facts.FactsPages;
import groundbass.web.desk.line.LinePages;
import groundbass.web.desk.line.LineSound;
import groundbass.web.desk.notes.NotesPages;
import groundbass.web.desk.notes.PicturePages;
import groundbass.web.desk.people.PeopleDesk;
import groundbass.web.desk.publish.LessonNews;
import groundbass.web.desk.publish.PreflightPage;
import groundbass.web.desk.publish.PublishPages;
import groundbass.web.desk.publish.TakingBackPages;
import groundbass.web.desk.recording.RecordingPages;
import groundbass.web.desk.revision.RevisionPages;
import groundbass.web.desk.room.Rooms;
import groundbass.web.desk.script.ScriptPages;
import groundbass.web.desk.site.ArchivePages;
import groundbass.web.desk.site.BackupPages;
import groundbass.web.desk.site.BeginningPages;
import groundbass.web.desk.site.BinPages;
import groundbass.web.desk.site.DeskNewsPages;
import groundbass.web.desk.site.ExchangePage;
import groundbass.web.desk.site.ImprintPages;
import groundbass.web.desk.site.KeysPage;
import groundbass.web.desk.site.LessonFindPage;
import groundbass.web.desk.site.LessonListPage;
import groundbass.web.desk.site.LetterPages;
import groundbass.web.desk.site.NewLessonPages;
import groundbass.web.desk.site.OutboxPages;
import groundbass.web.desk.site.OverviewPage;
import groundbass.web.desk.site.QuestionDesk;
import groundbass.web.desk.site.RhythmPages;
import groundbass.web.desk.site.SeriesPages;
import groundbass.web.desk.site.SettingsPages;
import groundbass.web.desk.sound.SoundPages;
import groundbass.web.desk.sound.TrackPages;
import groundbass.web.desk.takeout.TakeOutPages;
import groundbass.web.desk.walkthrough.PrompterPage;
import groundbass.web.desk.walkthrough.WalkthroughPages;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.limit.RateLimits;
import java.time.Clock;
import java.util.List;

/** The desk's page groups, and what they need. */
public final class DeskPages {
    private DeskPages() {}

    /** What belongs to every page. */
    public record Shell(
            Pages pages,
            Installation installation,
            AccessFilter accessFilter,
            SessionCookie cookie,
            RateLimits limits,
            Budget budget,
            CachedSettings chosen) {}

    /**
     * What the desk works with.
     *
     * @param mailed whether letters leave this machine
     */
    public record Services(
            Educators educators,
            SecondFactors factors,
            Sessions sessions,
            EducatorAccess access,
            Audit audit,
            boolean mailed,
            ProgramTokens programs,
            BrowserMark browserMark,
            SeriesCatalog catalog,
            Colleagues colleagues,
            Invitations invitations,
            Partings partings,
            Rhythms rhythms,
            Outlooks outlooks,
            Styles styles,
            Episodes episodes,
            SeriesRecord seriesRecord,
            EpisodeService writing,
            Beginnings beginnings,
            Uploads uploads,
            Recordings recordings,
            TakingOut takingOut,
            Releases releases,
            BrokenFiles brokenFiles,
            Publisher publisher,
            Timetable timetable,
            TakingBack takingBack,
            Bin bin,
            HourWatch watch,
            Outbox outbox,
            Questions questions,
            NewsTexts newsTexts,
            NewsReaders newsReaders,
            NewsQueue newsQueue,
            Announcer announcer,
            Settings settings,
            Backup backup,
            SeriesExport exporting,
            ArchiveImport importing,
            Blobs blobs,
            Clock clock) {}

    public static List<PageGroup> of(Shell shell, Services services) {
        var desk = new DeskContext(
                shell.pages(),
                shell.accessFilter(),
                services.catalog(),
                services.episodes(),
                services.styles(),
                services.educators(),
                shell.budget());
        var browser =
                new KnownBrowser(services.browserMark(), shell.installation().secure());
        var signIn = new EducatorSignIn(
                services.educators(),
                services.sessions(),
                shell.cookie(),
                browser,
                shell.limits(),
                services.audit(),
                services.factors());
        var publishing = new PublishingViews(services.releases(), services.publisher(), services.watch());
        var reauthentication = new Reauthentication(desk, signIn);
        var rooms = new Rooms(desk, reauthentication, services.writing(), publishing, services.publisher());
        var notes = new NotesPages(
                desk, rooms, services.writing(), services.uploads().pictures(), services.takingOut());
        var sound = new SoundPages(desk, rooms, services.uploads(), services.recordings(), services.takingOut());
        var publish = new PublishPages(
                desk,
                rooms,
                reauthentication,
                services.writing(),
                services.publisher(),
                publishing,
                new LessonNews(services.announcer(), services.newsQueue()),
                services.clock());
        return List.of(
                new DeskSignInPages(shell.pages(), services.educators(), signIn),
                new ForgottenPages(shell.pages(), services.access(), signIn, services.mailed()),
                new AccountPages(desk, services.educators(), services.sessions(), services.access(), signIn),
                new SecondFactorPages(desk, services.educators(), signIn, services.factors(), shell.chosen()),
                new FactorDemandPages(desk, services.educators(), signIn, services.factors()),
                new DeskSessionPages(desk, services.sessions(), services.audit()),
                new ProgramTokenPages(desk, services.educators(), signIn, services.programs(), services.clock()),
                new AuditPages(desk, services.audit(), services.educators(), services.seriesRecord()),
                new PeopleDesk(
                        desk,
                        services.educators(),
                        services.catalog(),
                        services.colleagues(),
                        services.invitations(),
                        services.partings(),
                        signIn,
                        shell.limits(),
                        services.mailed(),
                        services.clock()),
                new OverviewPage(
                        desk,
                        services.catalog(),
                        services.episodes(),
                        publishing,
                        services.outbox(),
                        services.questions(),
                        services.brokenFiles(),
                        services.educators(),
                        services.invitations()),
                new WeeksPage(
                        desk,
                        services.catalog(),
                        services.episodes(),
                        services.rhythms(),
                        services.timetable(),
                        publishing,
                        services.clock()),
                new RhythmPages(desk, services.rhythms(), services.outlooks()),
                new LessonListPage(desk, services.episodes(), publishing),
                new LessonFindPage(desk, services.catalog(), services.episodes(), publishing),
                new SeriesPages(desk, services.catalog(), shell.chosen()),
                new BeginningPages(desk, services.beginnings()),
                new NewLessonPages(desk, services.episodes(), services.writing(), services.beginnings()),
                new LetterPages(desk, services.styles()),
                new DeskNewsPages(
                        desk,
                        services.newsTexts(),
                        services.newsReaders(),
                        services.announcer(),
                        services.episodes(),
                        services.educators(),
                        services.outbox()),
                new QuestionDesk(desk, reauthentication, services.questions(), services.episodes()),
                new KeysPage(desk),
                new ExchangePage(desk),
                new EditorPages(desk, rooms, reauthentication, services.writing(), shell.limits()),
                new FormerPages(desk),
                new LinePages(desk, new LineSound(shell.limits())),
                sound,
                new TrackPages(desk, sound, services.writing(), services.uploads(), shell.limits()),
                new RecordingPages(desk, services.writing(), services.uploads(), services.recordings()),
                notes,
                new PicturePages(
                        desk,
                        notes,
                        services.writing(),
                        services.uploads().pictures(),
                        services.blobs(),
                        shell.limits()),
                new TakeOutPages(
                        desk,
                        services.episodes(),
                        services.writing(),
                        services.uploads(),
                        services.takingOut(),
                        services.releases(),
                        services.clock()),
                new WalkthroughPages(desk, rooms),
                new PrompterPage(desk, services.writing()),
                new ScriptPages(desk, rooms, services.writing()),
                new FactsPages(desk, rooms),
                publish,
                new PreflightPage(desk, rooms, reauthentication, services.publisher(), publishing, services.clock()),
                new TakingBackPages(desk, reauthentication, publish, services.takingBack(), services.bin()),
                new BinPages(desk, services.bin()),
                new RevisionPages(desk, rooms, reauthentication, services.writing(), services.releases()),
                new OutboxPages(desk, services.outbox(), services.educators(), services.settings(), services.clock()),
                new ImprintPages(desk, services.educators(), services.settings(), shell.chosen()),
                new SettingsPages(desk, services.settings(), shell.chosen()),
                new ArchivePages(
                        desk,
                        services.exporting(),
                        services.importing(),
                        services.blobs(),
                        services.audit(),
                        shell.limits(),
                        services.clock()),
                new BackupPages(
                        desk, services.educators(), signIn, services.audit(), services.backup(), services.clock()));
    }
}
