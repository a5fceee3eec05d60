package groundbass.site;

import groundbass.archive.ArchiveParts;
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
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.settings.Settings;
import java.time.Clock;
import java.util.Locale;
import java.util.function.Supplier;
import org.jdbi.v3.core.Jdbi;

/** Who comes to the site, how they get in, what they take, ask and are written. */
final class Audience {
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

    Audience(Jdbi jdbi, Accounts accounts, ArchiveParts library, Colleagues colleagues, Names names, Clock clock) {
        var audit = accounts.audit();
        var outbox = accounts.outbox();
        var educators = accounts.educators();
        var catalog = library.catalog();
        Supplier<LetterHead> head = names::head;
        Supplier<Locale> deskLanguage = names::language;
        this.sessions = accounts.sessions();
        this.students = accounts.students();
        this.consents = new Consents(jdbi, clock);
        this.tries = new Tries(jdbi, clock);
        this.browserMark = BrowserMark.of(jdbi);
        this.signIns = new SignIns(jdbi, outbox, students, consents, sessions, head, clock);
        this.practice = new Practice(jdbi, clock);
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
    }

    /** What tidies up behind all of them. */
    Housekeeping housekeeping(Accounts accounts, ProgramAnswers answers, Settings settings, Names names, Clock clock) {
        var idle = new IdleAccounts(
                accounts.jdbi(),
                accounts.idleStudents(),
                leaving,
                accounts.outbox(),
                names::head,
                () -> settings.current().accounts(),
                clock);
        return new Housekeeping(
                downloads,
                signIns,
                access,
                previewLinks,
                sessions,
                accounts.outbox(),
                accounts.audit(),
                tries,
                newsReaders,
                invitations,
                accounts.programs(),
                answers,
                idle);
    }
}
