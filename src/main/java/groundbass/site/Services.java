package groundbass.site;

import groundbass.audience.Housekeeping;
import groundbass.audience.IdleAccounts;
import groundbass.audience.Leaving;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Partings;
import groundbass.audience.colleague.Transfers;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.HeldReleases;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.NewsRequests;
import groundbass.audience.question.Questions;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.statistics.SeriesUse;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.BrowserMark;
import groundbass.audience.student.Consents;
import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.Practice;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.Students;
import groundbass.audience.student.Tries;
import groundbass.audience.visit.LessonVisits;
import groundbass.audience.visit.VisitFigures;
import groundbass.backup.Backup;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.educator.SecondFactors;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.episode.SeriesRecord;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.settings.SiteSettings;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Uploads;
import groundbass.demo.Demo;
import groundbass.demo.SeriesImport;
import groundbass.post.Correspondent;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.post.Postman;
import groundbass.publishing.Announcer;
import groundbass.publishing.Bin;
import groundbass.publishing.BuildSpecs;
import groundbass.publishing.HourLetters;
import groundbass.publishing.HourWatch;
import groundbass.publishing.NewsRound;
import groundbass.publishing.NewsTexts;
import groundbass.publishing.PublicationJob;
import groundbass.publishing.Publisher;
import groundbass.publishing.PublishingParts;
import groundbass.publishing.ReleaseChanges;
import groundbass.publishing.TakingBack;
import groundbass.publishing.Timetable;
import groundbass.publishing.address.LinkTries;
import groundbass.publishing.address.SiteAddresses;
import groundbass.publishing.jobs.ReleaseQueue;
import groundbass.publishing.preflight.NewsMail;
import groundbass.release.Bundles;
import groundbass.release.MadeAudio;
import groundbass.release.ReleaseBuilder;
import groundbass.release.Releases;
import groundbass.release.SeriesReleases;
import groundbass.release.care.BrokenFiles;
import groundbass.release.care.StoreCare;
import groundbass.release.find.LessonIndex;
import groundbass.release.request.PassingTracks;
import groundbass.release.request.StemsOnRequest;
import groundbass.release.request.TracksOnRequest;
import groundbass.store.BlobStore;
import groundbass.store.Database;
import groundbass.text.Languages;
import java.net.URI;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;
import org.jdbi.v3.core.Jdbi;

/** Everything below the pages, each part made once, in the order of the house from the ground up. */
final class Services {
    // --- store
    final Database database;
    final BlobStore blobs;
    final Clock clock;
    // --- catalog, post
    final Audit audit;
    final Settings settings;
    final Educators educators;
    final ProgramTokens programs;
    final ProgramAnswers programAnswers;
    final SecondFactors factors;
    final Uploads uploads;
    final Recordings recordings;
    final TakingOut takingOut;
    final SeriesCatalog catalog;
    final Colleagues colleagues;
    final Rhythms rhythms;
    final Outlooks outlooks;
    final Styles styles;
    final Episodes episodes;
    final SeriesRecord seriesRecord;
    final LinkTries links;
    final EpisodeService desk;
    final Beginnings beginnings;
    final Revisions revisions;
    final Outbox outbox;
    final Postman postman;
    final ExecutorService lettersUnderWay;
    // --- release, audience
    final Releases releases;
    final SeriesReleases seriesReleases;
    final Bundles bundles;
    final LessonIndex index;
    final StoredFiles files;
    final MadeAudio made;
    final ReleaseBuilder builder;
    final TracksOnRequest tracks;
    final StemsOnRequest stems;
    final BrokenFiles brokenFiles;
    final Backup backup;
    final StoreCare care;
    final Sessions sessions;
    final Students students;
    final Consents consents;
    final SignIns signIns;
    final Practice practice;
    final Questions questions;
    final EducatorAccess access;
    final PreviewLinks previewLinks;
    final Invitations invitations;
    final Partings partings;
    final Tries tries;
    final BrowserMark browserMark;
    final Downloads downloads;
    final LessonVisits visits;
    final VisitFigures visitFigures;
    final HeldReleases heldReleases;
    final Statistics statistics;
    final SeriesUse seriesUse;
    final RollUps rollUps;
    final NewsReaders newsReaders;
    final NewsRequests newsRequests;
    final NewsQueue newsQueue;
    final Leaving leaving;
    final Housekeeping housekeeping;
    // --- publishing
    final Publisher publisher;
    final Timetable timetable;
    final TakingBack takingBack;
    final Bin bin;
    final HourWatch watch;
    final ReleaseChanges releaseChanges;
    final PublicationJob publicationJob;
    final NewsTexts newsTexts;
    final Announcer announcer;
    final NewsRound newsRound;
    final Archives archives;
    final Demo demo;

    /** @param address the site's origin, where the educator has not chosen another */
    Services(Config config, URI address, Clock clock, Database database) {
        this.database = database;
        this.clock = clock;
        Jdbi jdbi = database.jdbi();

        var accounts = Accounts.over(jdbi, clock);
        var stored = Stored.over(database, accounts, config, clock);
        this.blobs = stored.blobs();
        this.audit = accounts.audit();
        this.archives = Archives.over(database, accounts, stored, clock);
        var library = archives.parts();
        this.settings = library.settings();
        Supplier<URI> publicAddress = () -> settings.current().publicAddress().orElse(address);
        this.educators = accounts.educators();
        this.factors = accounts.factors();
        this.programs = accounts.programs();
        this.programAnswers = new ProgramAnswers(jdbi, clock);
        this.catalog = library.catalog();
        this.colleagues = new Colleagues(jdbi, audit, clock);
        this.seriesRecord = new SeriesRecord(jdbi);
        this.rhythms = library.rhythms();
        this.outlooks = library.outlooks();
        this.styles = library.styles();
        this.episodes = stored.episodes();
        this.revisions = library.revisions();
        this.desk = library.desk();
        this.beginnings = library.beginnings();
        this.uploads = stored.uploads();
        this.recordings = new Recordings(stored.uploadRows(), blobs);
        this.takingOut = new TakingOut(jdbi, episodes, desk, audit, clock);
        this.outbox = accounts.outbox();
        this.lettersUnderWay = Executors.newCachedThreadPool(Services::letterThread);
        var sender = MailFactory.sender(config, () -> correspondent(settings.current()), clock);
        this.postman = new Postman(jdbi, sender, clock, lettersUnderWay);

        this.releases = stored.releases();
        this.seriesReleases = new SeriesReleases(jdbi);
        this.bundles = new Bundles(releases, blobs);
        this.index = new LessonIndex(jdbi, releases, revisions);
        var named = stored.named();
        this.files = new StoredFiles(blobs, named);
        this.made = new MadeAudio(jdbi, releases, blobs, clock);
        this.builder = new ReleaseBuilder(releases, revisions, uploads, blobs, made, clock);
        var passing = new PassingTracks(jdbi, releases, PassingTracks.USUAL_FILES, PassingTracks.USUAL_BYTES, clock);
        this.tracks = new TracksOnRequest(passing, builder);
        this.stems = new StemsOnRequest(builder, Stored.passing(config), StemsOnRequest.MOST_BYTES, clock);
        this.brokenFiles = new BrokenFiles(jdbi);
        this.backup = stored.backup();
        this.care = new StoreCare(named, brokenFiles, releases, uploads, builder, blobs, clock);
        Supplier<LetterHead> head = () -> head(publicAddress.get());
        this.sessions = accounts.sessions();
        this.students = accounts.students();
        this.consents = new Consents(jdbi, clock);
        this.tries = new Tries(jdbi, clock);
        this.browserMark = BrowserMark.of(jdbi);
        this.signIns = new SignIns(jdbi, outbox, students, consents, sessions, head, clock);
        this.practice = new Practice(jdbi, clock);
        Supplier<Locale> deskLanguage = () -> language(settings.current());
        this.questions = new Questions(jdbi, outbox, head, deskLanguage, clock);
        this.access = new EducatorAccess(jdbi, educators, sessions, outbox, audit, head, clock);
        this.previewLinks = new PreviewLinks(jdbi, audit, clock);
        var transfers =
                new Transfers(educators, catalog, colleagues, previewLinks, outbox, audit, head, deskLanguage, clock);
        this.invitations = new Invitations(jdbi, educators, catalog, transfers, outbox, audit, head, clock);
        this.partings = new Partings(jdbi, educators, catalog, colleagues, transfers, sessions, access, audit);
        var visitorKey = new VisitorKey(clock);
        this.downloads = new Downloads(jdbi, DownloadToken.of(jdbi), visitorKey, clock);
        this.visits = new LessonVisits(jdbi, visitorKey, clock);
        this.visitFigures = new VisitFigures(jdbi);
        this.heldReleases = new HeldReleases(jdbi);
        this.statistics = new Statistics(jdbi);
        this.seriesUse = new SeriesUse(jdbi);
        this.rollUps = accounts.rollUps();
        this.newsReaders = new NewsReaders(jdbi, clock);
        this.newsRequests = new NewsRequests(jdbi, outbox, newsReaders, head, clock);
        this.newsQueue = accounts.newsQueue();
        this.leaving = new Leaving(jdbi, students, newsReaders);
        this.housekeeping = new Housekeeping(
                downloads,
                signIns,
                access,
                previewLinks,
                sessions,
                outbox,
                audit,
                tries,
                newsReaders,
                invitations,
                programs,
                programAnswers,
                new IdleAccounts(
                        jdbi,
                        accounts.idleStudents(),
                        leaving,
                        outbox,
                        head,
                        () -> settings.current().accounts(),
                        clock));

        var addresses = new SiteAddresses(publicAddress, config.demo());
        var queue = new ReleaseQueue(database.dataSource(), clock);
        var specs = new BuildSpecs(catalog, styles, releases, addresses);
        this.links = LinkTries.over(() -> settings.current().triesLinks(), clock);
        var publishing = new PublishingParts(
                jdbi,
                clock,
                audit,
                catalog,
                desk,
                episodes,
                revisions,
                settings,
                stored.uploadRows(),
                releases,
                specs,
                addresses,
                queue,
                newsQueue,
                new NewsMail(config.mail().isPresent(), newsReaders, outbox),
                links);
        this.publisher = new Publisher(publishing);
        this.timetable = new Timetable(publishing, publisher, rhythms);
        this.takingBack = new TakingBack(publishing);
        this.bin = new Bin(publishing, stored.uploadRows());
        this.watch = new HourWatch(publishing, new HourLetters(publishing, educators, outbox));
        this.releaseChanges = new ReleaseChanges(releases, revisions);
        this.publicationJob = new PublicationJob(publishing, watch, database::flush);
        this.newsTexts = library.news();
        this.announcer = new Announcer(publishing, newsTexts, newsReaders, head);
        this.newsRound = new NewsRound(publishing, newsQueue, announcer, outbox);
        var making = new SeriesImport.Making(builder::open, builder::draw, builder::play, builder::build);
        var incoming = new SeriesImport(jdbi, clock, catalog, desk, episodes, releases, specs, making);
        this.demo = new Demo(jdbi, clock, educators, settings, episodes, releases, incoming);
    }

    /** Answers go to who teaches, where they have said so. */
    private static Correspondent correspondent(SiteSettings chosen) {
        return new Correspondent(
                chosen.siteName(), EmailAddress.read(chosen.imprint().email()));
    }

    private LetterHead head(URI publicAddress) {
        var chosen = settings.current();
        String teacher = Optional.of(chosen.imprint().name())
                .filter(name -> !name.isEmpty())
                .or(() -> educators.owner().map(Educator::name))
                .orElse(chosen.siteName());
        return new LetterHead(chosen.siteName(), teacher, publicAddress);
    }

    private static Locale language(SiteSettings settings) {
        return Languages.spoken(Locale.forLanguageTag(settings.language()));
    }

    /** A letter that hangs keeps nothing from ending; it is tried again after the next start. */
    private static Thread letterThread(Runnable way) {
        var thread = new Thread(way, "letter");
        thread.setDaemon(true);
        return thread;
    }
}
