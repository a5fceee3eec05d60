package groundbass.site;

import groundbass.audience.Housekeeping;
import groundbass.catalog.educator.Audit;
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
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Uploads;
import groundbass.post.Outbox;
import groundbass.post.Postman;
import groundbass.store.BlobStore;
import groundbass.store.Database;
import java.net.URI;
import java.time.Clock;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
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
    final EpisodeService desk;
    final Beginnings beginnings;
    final Revisions revisions;
    final Outbox outbox;
    final Postman postman;
    final ExecutorService lettersUnderWay;
    final Archives archives;
    // --- what becomes of lessons, and for whom
    final Making making;
    final Audience audience;
    final Housekeeping housekeeping;
    final Publishing publishing;

    /** @param address the site's origin, where the educator has not chosen another */
    Services(Config config, URI address, Clock clock, Database database) {
        this.database = database;
        this.clock = clock;
        Jdbi jdbi = database.jdbi();

        var accounts = Accounts.over(jdbi, clock);
        var stored = Stored.over(database, accounts, config, clock);
        this.archives = Archives.over(database, accounts, stored, clock);
        var library = archives.parts();
        this.blobs = stored.blobs();
        this.audit = accounts.audit();
        this.settings = library.settings();
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

        var names = new Names(settings, educators, address);
        this.lettersUnderWay = Executors.newCachedThreadPool(Services::letterThread);
        var sender = MailFactory.sender(config, names::correspondent, clock);
        this.postman = new Postman(jdbi, sender, clock, lettersUnderWay);

        this.making = new Making(jdbi, stored, library, config, clock);
        this.audience = new Audience(jdbi, accounts, library, colleagues, names, clock);
        this.housekeeping = audience.housekeeping(accounts, programAnswers, settings, names, clock);
        this.publishing = new Publishing(database, stored, library, accounts, making, audience, names, config, clock);
    }

    /** A letter that hangs keeps nothing from ending; it is tried again after the next start. */
    private static Thread letterThread(Runnable way) {
        var thread = new Thread(way, "letter");
        thread.setDaemon(true);
        return thread;
    }
}
