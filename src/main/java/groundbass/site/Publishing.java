package groundbass.site;

import groundbass.archive.ArchiveParts;
import groundbass.demo.Demo;
import groundbass.demo.SeriesImport;
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
import groundbass.store.Database;
import java.time.Clock;
import org.jdbi.v3.core.Jdbi;

/** How lessons go out: promised, built, announced, corrected, taken back. */
final class Publishing {
    final LinkTries links;
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
    final Demo demo;

    Publishing(
            Database database,
            Stored stored,
            ArchiveParts library,
            Accounts accounts,
            Making making,
            Audience audience,
            Names names,
            Config config,
            Clock clock) {
        Jdbi jdbi = database.jdbi();
        var addresses = new SiteAddresses(names::publicAddress, config.demo());
        var specs = new BuildSpecs(library.catalog(), library.styles(), making.releases, addresses);
        this.links = LinkTries.over(() -> library.settings().current().triesLinks(), clock);
        var parts = new PublishingParts(
                jdbi,
                clock,
                accounts.audit(),
                library.catalog(),
                library.desk(),
                library.episodes(),
                library.revisions(),
                library.settings(),
                stored.uploadRows(),
                making.releases,
                specs,
                addresses,
                new ReleaseQueue(database.dataSource(), clock),
                accounts.newsQueue(),
                new NewsMail(config.mail().isPresent(), audience.newsReaders, accounts.outbox()),
                links);
        this.publisher = new Publisher(parts);
        this.timetable = new Timetable(parts, publisher, library.rhythms());
        this.takingBack = new TakingBack(parts);
        this.bin = new Bin(parts, stored.uploadRows());
        this.watch = new HourWatch(parts, new HourLetters(parts, accounts.educators(), accounts.outbox()));
        this.releaseChanges = new ReleaseChanges(making.releases, library.revisions());
        this.publicationJob = new PublicationJob(parts, watch, database::flush);
        this.newsTexts = library.news();
        this.announcer = new Announcer(parts, newsTexts, audience.newsReaders, names::head);
        this.newsRound = new NewsRound(parts, accounts.newsQueue(), announcer, accounts.outbox());
        this.demo = demo(jdbi, library, accounts, making, specs, clock);
    }

    private static Demo demo(
            Jdbi jdbi, ArchiveParts library, Accounts accounts, Making making, BuildSpecs specs, Clock clock) {
        var builder = making.builder;
        var steps = new SeriesImport.Making(builder::open, builder::draw, builder::play, builder::build);
        var incoming = new SeriesImport(
                jdbi, clock, library.catalog(), library.desk(), library.episodes(), making.releases, specs, steps);
        return new Demo(
                jdbi, clock, accounts.educators(), library.settings(), library.episodes(), making.releases, incoming);
    }
}
