package groundbass.release;

import groundbass.catalog.episode.Revisions;
import groundbass.catalog.upload.Uploads;
import groundbass.store.Blobs;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Builds a release: makes every file, keeps it, and closes the release with their names. Building one that is closed
 * already does nothing, and one that was overtaken ends at its next step. What fails is told on the desk and in the log,
 * and is tried again later; what a shutdown stops has not failed and goes on after the next start.
 */
public final class ReleaseBuilder {
    private static final Logger log = LoggerFactory.getLogger(ReleaseBuilder.class);

    private final Releases releases;
    private final Revisions revisions;
    private final Uploads uploads;
    private final Blobs blobs;
    private final MadeAudio made;
    private final Clock clock;
    private final Map<ReleaseId, Object> building = new ConcurrentHashMap<>();
    private volatile boolean stopping;

    public ReleaseBuilder(
            Releases releases, Revisions revisions, Uploads uploads, Blobs blobs, MadeAudio made, Clock clock) {
        this.releases = releases;
        this.revisions = revisions;
        this.uploads = uploads;
        this.blobs = blobs;
        this.made = made;
        this.clock = clock;
    }

    /** When this returns the release is closed, whoever built it: a second caller waits for the first. */
    public void build(ReleaseId id) {
        synchronized (building.computeIfAbsent(id, any -> new Object())) {
            var release = releases.find(id).orElseThrow();
            if (release.isUnderWay()) {
                close(release);
            }
        }
        building.remove(id);
    }

    /** From now on a build that breaks off was stopped. */
    public void stop() {
        stopping = true;
    }

    private void close(Release release) {
        try {
            releases.ready(release.id(), files(release), clock.instant());
        } catch (IOException | RuntimeException e) {
            if (stopping || isMachineStopping()) {
                log.info("release {} was stopped with the server; it is built after the next start", release.id());
            } else {
                failed(release, e);
            }
        }
    }

    private void failed(Release release, Exception e) {
        int tries = releases.failed(release.id(), String.valueOf(e.getMessage()), clock.instant());
        if (tries == 0) {
            log.info("release {} was overtaken while it was built", release.id());
        } else if (tries == 1) {
            log.error("release {} cannot be built; it is tried again", release.id(), e);
        } else {
            log.error("release {} cannot be built, try {}: {}", release.id(), tries, e.toString());
        }
    }

    /** The machine says so before anybody has told this builder: it takes no more hooks ({@link Runtime#addShutdownHook}). */
    private static boolean isMachineStopping() {
        var probe = new Thread(() -> {}, "probe");
        try {
            Runtime.getRuntime().addShutdownHook(probe);
            Runtime.getRuntime().removeShutdownHook(probe);
            return false;
        } catch (IllegalStateException shuttingDown) {
            return true;
        }
    }

    /**
     * Makes the files of a closed release again, where some of them are gone: the same build specification gives the same bytes, and
     * these take their old places. The release itself stays as it is.
     *
     * @throws IOException or a runtime exception where something that it was made of is gone
     */
    void restore(Release release) throws IOException {
        files(release);
    }

    private List<ReleaseFile> files(Release release) throws IOException {
        var document = revisions.find(release.spec().revision()).orElseThrow().document();
        var build = new Build(release, document, blobs, releases, uploads);
        var lines = PlayAlong.lines(build.lesson(), blobs, made);
        try {
            return build.files(lines);
        } finally {
            lines.forEach(LineAudio::close);
        }
    }
}
