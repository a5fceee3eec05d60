package groundbass.publishing;

import groundbass.audience.news.NewsQueue;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.upload.UploadRepository;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.NotePictures;
import groundbass.publishing.address.Addresses;
import groundbass.publishing.address.LinkTries;
import groundbass.publishing.jobs.BuildQueue;
import groundbass.publishing.preflight.Missing;
import groundbass.publishing.preflight.NewsMail;
import groundbass.publishing.preflight.Preflight;
import groundbass.release.Releases;
import java.time.Clock;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Jdbi;

/** What the steps of publishing share, each made once. */
public final class PublishingParts {
    final Jdbi jdbi;
    final Clock clock;
    final Audit audit;
    final SeriesCatalog catalog;
    final EpisodeService desk;
    final Episodes episodes;
    final Revisions revisions;
    final Settings settings;
    final UploadRepository uploads;
    final Releases releases;
    final Addresses addresses;
    final BuildQueue queue;
    final NewsQueue news;
    final NewsMail mail;
    final LinkTries links;
    final Preflight preflight;
    final AcceptedRemarks accepted;
    final BuildSpecs specs;
    final Freezing freezing;

    public PublishingParts(
            Jdbi jdbi,
            Clock clock,
            Audit audit,
            SeriesCatalog catalog,
            EpisodeService desk,
            Episodes episodes,
            Revisions revisions,
            Settings settings,
            UploadRepository uploads,
            Releases releases,
            BuildSpecs specs,
            Addresses addresses,
            BuildQueue queue,
            NewsQueue news,
            NewsMail mail,
            LinkTries links) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.audit = audit;
        this.catalog = catalog;
        this.desk = desk;
        this.episodes = episodes;
        this.revisions = revisions;
        this.settings = settings;
        this.uploads = uploads;
        this.releases = releases;
        this.specs = specs;
        this.addresses = addresses;
        this.queue = queue;
        this.news = news;
        this.mail = mail;
        this.links = links;
        this.preflight = new Preflight(addresses);
        this.accepted = new AcceptedRemarks(jdbi, episodes, clock);
        this.freezing = new Freezing(specs, releases, clock);
    }

    /** What a document names and is not there now. */
    Missing missing(EpisodeDocument document) {
        var pictures = NotePictures.ids(document.notes()).stream()
                .filter(picture -> !uploads.hasPicture(picture))
                .collect(Collectors.toSet());
        var recordings = document.backingTracks().stream()
                .map(BackingTrack::upload)
                .filter(upload -> !uploads.has(upload))
                .collect(Collectors.toSet());
        return new Missing(pictures, recordings);
    }

    /** To look at lessons as they stand from now on. */
    SiteLook look() {
        return new SiteLook(this);
    }
}
