package groundbass.web.student;

import groundbass.audience.Leaving;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.HeldReleases;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.NewsRequests;
import groundbass.audience.question.Questions;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Consents;
import groundbass.audience.student.Practice;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.Students;
import groundbass.audience.visit.LessonVisits;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.settings.SiteSettings;
import groundbass.post.Outbox;
import groundbass.post.Postman;
import groundbass.publishing.ReleaseChanges;
import groundbass.release.Bundles;
import groundbass.release.Releases;
import groundbass.release.SeriesReleases;
import groundbass.release.find.LessonIndex;
import groundbass.release.request.StemsOnRequest;
import groundbass.release.request.TracksOnRequest;
import groundbass.store.Blobs;
import groundbass.web.general.HomePage;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.account.AskedCookie;
import groundbass.web.student.account.DownloadView;
import groundbass.web.student.account.MePages;
import groundbass.web.student.account.OwnData;
import groundbass.web.student.account.OwnNews;
import groundbass.web.student.account.PractisedPages;
import groundbass.web.student.account.QuestionPages;
import groundbass.web.student.account.ReturnCookie;
import groundbass.web.student.account.SessionPages;
import groundbass.web.student.account.SignInPages;
import groundbass.web.student.account.StudentSignIn;
import groundbass.web.student.feed.FeedPages;
import groundbass.web.student.file.ExactSound;
import groundbass.web.student.file.FilePages;
import groundbass.web.student.file.Manifests;
import groundbass.web.student.file.OfferedFiles;
import groundbass.web.student.file.ReleaseAnswers;
import groundbass.web.student.file.SeriesFiles;
import groundbass.web.student.lesson.CardPictures;
import groundbass.web.student.lesson.Cards;
import groundbass.web.student.lesson.EpisodePage;
import groundbass.web.student.lesson.EpisodeViews;
import groundbass.web.student.lesson.FindPage;
import groundbass.web.student.lesson.FittedSheets;
import groundbass.web.student.lesson.Home;
import groundbass.web.student.lesson.Lessons;
import groundbass.web.student.lesson.LinkPictures;
import groundbass.web.student.lesson.OwnTracks;
import groundbass.web.student.lesson.ReleaseContents;
import groundbass.web.student.lesson.SeriesPage;
import groundbass.web.student.lesson.SittingPage;
import groundbass.web.student.news.NewsPages;
import groundbass.web.student.news.OwnNewsPages;
import groundbass.web.student.preview.PreviewPages;
import groundbass.web.student.preview.Previews;
import groundbass.web.student.visit.VisitCounter;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** The page groups of the student's side. */
public final class StudentPages {
    private StudentPages() {}

    /**
     * What belongs to every page.
     *
     * @param keeping whether lessons may be kept on a device
     */
    public record Shell(
            Pages pages,
            Installation installation,
            boolean keeping,
            Supplier<SiteSettings> settings,
            AccessFilter accessFilter,
            SessionCookie cookie,
            RateLimits limits,
            Clock clock) {}

    /**
     * Where lessons and their files are found.
     *
     * @param outlook what students may know of lessons that wait for their hour
     */
    public record Library(
            SeriesCatalog catalog,
            Episodes episodes,
            Revisions revisions,
            Releases releases,
            SeriesReleases seriesReleases,
            LessonIndex index,
            ReleaseChanges changes,
            Function<SeriesId, Outlook> outlook,
            Blobs blobs,
            TracksOnRequest tracks,
            StemsOnRequest stems,
            Bundles bundles,
            ReleaseAnswers answers) {}

    /**
     * Who reads them.
     *
     * @param mailed whether letters leave; else they lie on the desk
     * @param postman lays them there
     */
    public record Audience(
            SignIns signIns,
            Practice practice,
            Questions questions,
            NewsReaders newsReaders,
            NewsRequests newsRequests,
            Leaving leaving,
            Sessions sessions,
            Students students,
            Consents consents,
            Audit audit,
            PreviewLinks previewLinks,
            Outbox outbox,
            Downloads downloads,
            LessonVisits visits,
            HeldReleases heldReleases,
            Statistics statistics,
            boolean mailed,
            Postman postman) {}

    public static List<PageGroup> of(Shell shell, Library library, Audience audience) {
        var lessons = new Lessons(
                library.catalog(),
                library.episodes(),
                library.releases(),
                library.seriesReleases(),
                library.outlook(),
                shell.clock());
        var visits = new VisitCounter(audience.visits(), shell.accessFilter(), shell.settings());
        return Stream.concat(
                        reading(shell, library, audience, lessons, visits),
                        taking(shell, library, audience, lessons, visits))
                .toList();
    }

    private static Stream<PageGroup> reading(
            Shell shell, Library library, Audience audience, Lessons lessons, VisitCounter visits) {
        var pages = shell.pages();
        var contents = new ReleaseContents(library.releases(), library.blobs());
        var cards = new Cards(contents);
        var views = new EpisodeViews(contents, new OwnTracks(library.revisions()), shell.keeping());
        return Stream.of(
                new HomePage(
                        pages, new Home(lessons, cards, shell.installation().demo())),
                // before the pages of lessons, whose addresses would hide theirs
                new FeedPages(pages, lessons, library.releases(), shell.settings()),
                news(shell, library, audience),
                new SeriesPage(pages, lessons, cards, library.seriesReleases(), shell.settings()),
                new FindPage(pages, library.index(), contents, shell.limits(), shell.clock()),
                new EpisodePage(
                        pages,
                        lessons,
                        views,
                        shell.settings(),
                        shell.accessFilter(),
                        audience.heldReleases(),
                        library.changes(),
                        visits),
                new SittingPage(lessons, contents, visits, shell.limits()),
                new LinkPictures(lessons, contents, library.blobs()),
                new CardPictures(lessons, library.releases(), library.blobs()),
                new FittedSheets(lessons, contents, shell.limits(), shell.clock()),
                previews(shell, library, views, audience.previewLinks()));
    }

    private static PageGroup news(Shell shell, Library library, Audience audience) {
        return new NewsPages(
                shell.pages(),
                shell.accessFilter(),
                audience.students(),
                library.catalog(),
                audience.newsRequests(),
                audience.newsReaders(),
                shell.settings(),
                shell.limits(),
                toDesk(audience));
    }

    private static PageGroup previews(Shell shell, Library library, EpisodeViews views, PreviewLinks links) {
        var previews = new Previews(
                library.catalog(),
                library.episodes(),
                library.releases(),
                library.answers(),
                views,
                shell.settings(),
                shell.clock());
        return new PreviewPages(
                shell.pages(),
                shell.accessFilter(),
                shell.limits(),
                previews,
                links,
                new ExactSound(library.stems(), shell.limits()));
    }

    private static Stream<PageGroup> taking(
            Shell shell, Library library, Audience audience, Lessons lessons, VisitCounter visits) {
        var signIn = new StudentSignIn(audience.sessions(), shell.cookie());
        return Stream.of(
                files(shell, library, audience.downloads()),
                seriesFiles(shell, library, audience.downloads(), lessons),
                new SignInPages(
                        shell.pages(),
                        shell.accessFilter(),
                        audience.signIns(),
                        shell.settings(),
                        signIn,
                        audience.audit(),
                        shell.limits(),
                        new ReturnCookie(shell.installation().secure()),
                        new AskedCookie(shell.installation().secure()),
                        toDesk(audience),
                        lessons,
                        visits),
                new PractisedPages(
                        shell.pages(),
                        shell.accessFilter(),
                        audience.practice(),
                        library.episodes(),
                        shell.keeping(),
                        shell.clock()),
                new QuestionPages(
                        shell.pages(),
                        shell.accessFilter(),
                        audience.questions(),
                        library.episodes(),
                        shell.limits(),
                        toDesk(audience)),
                new OwnNewsPages(
                        shell.pages(),
                        shell.accessFilter(),
                        audience.students(),
                        library.catalog(),
                        audience.newsReaders()),
                new SessionPages(shell.accessFilter(), audience.sessions(), audience.audit()),
                new MePages(
                        shell.pages(),
                        shell.accessFilter(),
                        audience.students(),
                        audience.sessions(),
                        audience.statistics(),
                        new DownloadView(library.episodes(), library.releases(), library.changes()),
                        new OwnData(
                                audience.consents(),
                                audience.statistics(),
                                audience.sessions(),
                                audience.signIns(),
                                audience.practice(),
                                audience.questions(),
                                audience.newsReaders(),
                                audience.newsRequests(),
                                audience.outbox(),
                                library.episodes(),
                                library.catalog()),
                        new OwnNews(library.catalog(), audience.newsReaders()),
                        audience.leaving(),
                        signIn));
    }

    private static Optional<Postman> toDesk(Audience audience) {
        return audience.mailed() ? Optional.empty() : Optional.of(audience.postman());
    }

    private static PageGroup files(Shell shell, Library library, Downloads downloads) {
        return new FilePages(
                new OfferedFiles(library.releases(), library.episodes(), library.tracks(), shell.clock()),
                downloads,
                shell.accessFilter(),
                shell.limits(),
                shell.installation(),
                shell.settings(),
                new Manifests(library.blobs()),
                library.answers(),
                new ExactSound(library.stems(), shell.limits()));
    }

    private static PageGroup seriesFiles(Shell shell, Library library, Downloads downloads, Lessons lessons) {
        return new SeriesFiles(
                lessons,
                library.releases(),
                library.seriesReleases(),
                library.bundles(),
                downloads,
                shell.accessFilter(),
                shell.limits(),
                shell.settings(),
                shell.clock());
    }
}
