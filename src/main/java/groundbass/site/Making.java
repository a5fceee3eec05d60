package groundbass.site;

import groundbass.archive.ArchiveParts;
import groundbass.backup.Backup;
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
import java.time.Clock;
import org.jdbi.v3.core.Jdbi;

/** What is made of lessons, what it is kept as, and who looks after it. */
final class Making {
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

    Making(Jdbi jdbi, Stored stored, ArchiveParts library, Config config, Clock clock) {
        var blobs = stored.blobs();
        this.releases = stored.releases();
        this.seriesReleases = new SeriesReleases(jdbi);
        this.bundles = new Bundles(releases, blobs);
        this.index = new LessonIndex(jdbi, releases, library.revisions());
        this.files = new StoredFiles(blobs, stored.named());
        this.made = new MadeAudio(jdbi, releases, blobs, clock);
        this.builder = new ReleaseBuilder(releases, library.revisions(), stored.uploads(), blobs, made, clock);
        var passing = new PassingTracks(jdbi, releases, PassingTracks.USUAL_FILES, PassingTracks.USUAL_BYTES, clock);
        this.tracks = new TracksOnRequest(passing, builder);
        this.stems = new StemsOnRequest(builder, Stored.passing(config), StemsOnRequest.MOST_BYTES, clock);
        this.brokenFiles = new BrokenFiles(jdbi);
        this.backup = stored.backup();
        this.care = new StoreCare(stored.named(), brokenFiles, releases, stored.uploads(), builder, blobs, clock);
    }
}
