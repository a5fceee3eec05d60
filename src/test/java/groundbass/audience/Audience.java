package groundbass.audience;

import groundbass.Parts;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Partings;
import groundbass.audience.colleague.Transfers;
import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadId;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.NewsRequests;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Consents;
import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.IdleStudents;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.settings.AccountRules;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Everything of this room on one database, at ten o'clock of a Monday, with short ways to do the usual. */
public final class Audience {
    public static final EpisodeId FIRST = new EpisodeId("episode000000001");
    public static final EpisodeId SECOND = new EpisodeId("episode000000002");
    public static final EmailAddress ANNA = new EmailAddress("a.reader@example.org");
    public static final EmailAddress BERT = new EmailAddress("b.reader@example.org");
    public static final Requester VISITOR =
            new Requester.Anonymous("192.0.2.7", "A browser/1.0"); // address of RFC 5737
    public static final Requester ROBOT = new Requester.Anonymous("192.0.2.8", "Examplebot/2.1");

    /** What the educator chose at last. */
    public URI publicAddress = URI.create("https://bass.example:8443");

    public final SettableClock clock = SettableClock.at("2026-03-02T10:00:00Z");
    final Database database;
    public final Outbox outbox;
    public final Students students;
    public final Consents consents;
    public final Sessions sessions;
    public final SignIns signIns;
    public final Audit audit;
    public final Educators educators;
    public final EducatorAccess access;
    public final VisitorKey visitors;
    final DownloadToken tokens;
    public final Downloads downloads;
    public final Statistics statistics;
    public final SeriesCatalog catalog;
    public final Colleagues colleagues;
    public final PreviewLinks previews;
    public final Invitations invitations;
    public final Partings partings;
    public final NewsReaders newsReaders;
    public final NewsRequests newsRequests;
    public final NewsQueue newsQueue;
    final IdleAccounts idle;

    /** What the site's owner chose at last. */
    AccountRules rules = AccountRules.USUAL;

    public Audience(Database database) {
        this.database = database;
        var jdbi = database.jdbi();
        outbox = new Outbox(jdbi, clock);
        audit = new Audit(jdbi, clock);
        students = new Students(jdbi, outbox, audit, clock);
        consents = new Consents(jdbi, clock);
        sessions = Parts.sessions(jdbi, clock);
        signIns = new SignIns(jdbi, outbox, students, consents, sessions, this::head, clock);
        educators = new Educators(jdbi, audit, clock);
        access = new EducatorAccess(jdbi, educators, sessions, outbox, audit, this::head, clock);
        visitors = new VisitorKey(clock);
        tokens = DownloadToken.of(jdbi);
        downloads = new Downloads(jdbi, tokens, visitors, clock);
        statistics = new Statistics(jdbi);
        catalog = new SeriesCatalog(jdbi, audit, clock);
        colleagues = new Colleagues(jdbi, audit, clock);
        previews = new PreviewLinks(jdbi, audit, clock);
        var transfers = new Transfers(
                educators, catalog, colleagues, previews, outbox, audit, this::head, () -> Locale.ENGLISH, clock);
        invitations = new Invitations(jdbi, educators, catalog, transfers, outbox, audit, this::head, clock);
        partings = new Partings(jdbi, educators, catalog, colleagues, transfers, sessions, access, audit);
        newsReaders = new NewsReaders(jdbi, clock);
        newsRequests = new NewsRequests(jdbi, outbox, newsReaders, this::head, clock);
        newsQueue = new NewsQueue(jdbi, clock);
        var leaving = new Leaving(jdbi, students, newsReaders);
        idle = new IdleAccounts(jdbi, new IdleStudents(jdbi), leaving, outbox, this::head, () -> rules, clock);
    }

    private LetterHead head() {
        return new LetterHead("Quay Lessons", "A. Teacher", publicAddress);
    }

    public static ReleasedFile file(EpisodeId episode, String name, long size) {
        return new ReleasedFile("release000000001", episode, name, size);
    }

    public static FileRequest whole(ReleasedFile file, Requester requester) {
        return new FileRequest(file, requester, true, Optional.empty());
    }

    public static FileRequest range(ReleasedFile file, Requester requester) {
        return new FileRequest(file, requester, false, Optional.empty());
    }

    public StudentId student(EmailAddress email) {
        return database.jdbi()
                .inTransaction(handle -> students.create(handle, email, Locale.ENGLISH))
                .id();
    }

    /** The token in the newest letter, as its reader would find it. */
    public SecretToken mailed() {
        String text = outbox.newest(1).get(0).message().text();
        String link = text.lines()
                .filter(line -> line.startsWith(publicAddress + "/"))
                .findFirst()
                .orElseThrow();
        return new SecretToken(link.substring(link.lastIndexOf('/') + 1));
    }

    public SecretToken requested(EmailAddress email) {
        signIns.request(email, Locale.ENGLISH);
        clock.advance(Duration.ofMillis(1));
        return mailed();
    }

    public DownloadId take(ReleasedFile file, Requester requester) {
        DownloadId id = downloads.begin(whole(file, requester)).id();
        downloads.sent(id, ByteSpan.of(0, file.size()));
        downloads.settle();
        return id;
    }

    public Download download(DownloadId id) {
        downloads.settle();
        return downloads.find(id).orElseThrow();
    }

    public List<Download> all() {
        downloads.settle();
        return database.jdbi().withHandle(handle -> handle.createQuery(
                        "select " + DownloadRows.COLUMNS + " from download order by started_at")
                .mapTo(Download.class)
                .list());
    }

    public long rows(String table) {
        return database.jdbi().withHandle(handle -> handle.createQuery("select count(*) from " + table)
                .mapTo(Long.class)
                .one());
    }

    /** All that a table holds, as text to search. */
    public String contents(String table) {
        return database.jdbi().withHandle(handle -> handle.createQuery("select * from " + table)
                .mapToMap()
                .list()
                .toString());
    }
}
