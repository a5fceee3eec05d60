package groundbass;

import groundbass.archive.ArchiveParts;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.UploadRepository;
import groundbass.catalog.upload.Uploads;
import groundbass.demo.SeriesImport;
import groundbass.post.Outbox;
import groundbass.publishing.BuildSpecs;
import groundbass.publishing.NewsTexts;
import groundbass.publishing.PublishingParts;
import groundbass.publishing.address.Addresses;
import groundbass.publishing.address.LinkTries;
import groundbass.publishing.jobs.BuildQueue;
import groundbass.publishing.preflight.NewsMail;
import groundbass.release.Built;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import java.time.Clock;
import java.util.function.Consumer;
import org.jdbi.v3.core.Jdbi;

/** The parts of a site that write lessons and bring them out, wired over a test's database as the site wires them. */
public record Parts(
        Jdbi jdbi,
        Clock clock,
        Audit audit,
        Settings settings,
        Educators educators,
        SeriesCatalog catalog,
        Episodes episodes,
        Revisions revisions,
        EpisodeService desk,
        Releases releases) {
    public static Parts over(Jdbi jdbi, Clock clock) {
        var audit = new Audit(jdbi, clock);
        var catalog = new SeriesCatalog(jdbi, audit, clock);
        var episodes = new Episodes(jdbi);
        var revisions = new Revisions(jdbi, clock);
        return new Parts(
                jdbi,
                clock,
                audit,
                new Settings(jdbi, audit),
                new Educators(jdbi, audit, clock),
                catalog,
                episodes,
                revisions,
                new EpisodeService(jdbi, audit, clock, catalog, episodes, revisions),
                new Releases(jdbi));
    }

    public static Sessions sessions(Jdbi jdbi, Clock clock) {
        return new Sessions(jdbi, new ProgramTokens(jdbi, new Audit(jdbi, clock), clock), clock);
    }

    public Uploads uploads(Blobs blobs) {
        return new Uploads(jdbi, new UploadRepository(jdbi), episodes, blobs, audit, clock);
    }

    /** What archives are written of and brought into. */
    public ArchiveParts archives(Blobs blobs) {
        return new ArchiveParts(
                jdbi,
                clock,
                audit,
                settings,
                catalog,
                new Styles(jdbi, audit),
                new Rhythms(jdbi, audit),
                new Outlooks(jdbi, audit),
                new Beginnings(jdbi, audit),
                new NewsTexts(jdbi, audit),
                episodes,
                desk,
                revisions,
                uploads(blobs),
                releases,
                blobs);
    }

    public Recordings recordings(Blobs blobs) {
        return new Recordings(new UploadRepository(jdbi), blobs);
    }

    public NewsQueue news() {
        return new NewsQueue(jdbi, clock);
    }

    public PublishingParts publishing(Addresses addresses, BuildQueue queue) {
        return new PublishingParts(
                jdbi,
                clock,
                audit,
                catalog,
                desk,
                episodes,
                revisions,
                settings,
                new UploadRepository(jdbi),
                releases,
                new BuildSpecs(catalog, new Styles(jdbi, audit), releases, addresses),
                addresses,
                queue,
                news(),
                new NewsMail(true, new NewsReaders(jdbi, clock), new Outbox(jdbi, clock)),
                LinkTries.none(clock));
    }

    /** @param build makes all of a release; what readers have before is only noted */
    public SeriesImport seriesImport(Addresses addresses, Consumer<ReleaseId> build) {
        var specs = new BuildSpecs(catalog, new Styles(jdbi, audit), releases, addresses);
        var making = new SeriesImport.Making(id -> Built.drawn(releases, id), id -> {}, id -> {}, build);
        return new SeriesImport(jdbi, clock, catalog, desk, episodes, releases, specs, making);
    }
}
