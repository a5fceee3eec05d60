package groundbass.release;

import groundbass.catalog.episode.RevisionId;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.upload.Uploads;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.Lesson;
import groundbass.release.play.ExactStems;
import groundbass.store.Blobs;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Builds a release: makes every file, keeps it, and closes the release with their names. Page and sheet, and what the
 * page plays, can be made before, so that readers have them while the rest is made. Building one that is closed already
 * does nothing, and one that was overtaken ends at its next step. What fails is told on the desk and in the log, and is
 * tried again later; what a shutdown stops has not failed and goes on after the next start. What a newer server beside this
 * one has asked for is left to that.
 */
public final class ReleaseBuilder {
    private static final Logger log = LoggerFactory.getLogger(ReleaseBuilder.class);

    private static final int LOCKS = 64;

    private final Releases releases;
    private final Revisions revisions;
    private final Uploads uploads;
    private final Blobs blobs;
    private final MadeAudio made;
    private final Clock clock;
    /** A release is worked on by whoever holds its lock; two releases that share one wait for each other, which is rare. */
    private final Object[] locks = Stream.generate(Object::new).limit(LOCKS).toArray();

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

    /**
     * A second caller waits for the first. When this returns the release is closed, or is none to build here: it failed, was
     * stopped or overtaken, is a newer program's, or is gone.
     */
    public void build(ReleaseId id) {
        alone(id, release -> releases.builds().ready(id, files(release), clock.instant()));
    }

    /** Makes page and sheet of a release and enters them; all else is still to be built. */
    public void open(ReleaseId id) {
        alone(id, release -> {
            if (releases.files().of(id).isEmpty()) {
                releases.builds().add(id, build(release).first());
            }
        });
    }

    /** Makes all that is drawn or written of a release and enters it; sound is still to be made. */
    public void draw(ReleaseId id) {
        alone(id, release -> {
            if (!Build.isDrawn(releases.files().of(id))) {
                releases.builds().add(id, build(release).drawn());
            }
        });
    }

    /** Makes what is played on the page of a release that was drawn, and enters it; the rest is still to be built. */
    public void play(ReleaseId id) {
        alone(id, release -> {
            if (releases.files().of(id).stream().noneMatch(file -> file.role() == FileRole.PLAY)) {
                var build = build(release);
                releases.builds().add(id, with(build, build::played));
            }
        });
    }

    /** A part of the work on a release. */
    private interface Work {
        void on(Release release) throws IOException;
    }

    private void alone(ReleaseId id, Work work) {
        synchronized (locks[Math.floorMod(id.hashCode(), LOCKS)]) {
            releases.find(id) // it may have been deleted since it was asked for
                    .filter(release -> release.isUnderWay() && !release.spec().isOfNewerProgram())
                    .ifPresent(release -> tried(release, work));
        }
    }

    /** From now on a build that breaks off was stopped. */
    public void stop() {
        stopping = true;
    }

    private void tried(Release release, Work work) {
        try {
            work.on(release);
        } catch (IOException
                | RuntimeException
                | Error e) { // too little memory, say: it is told and has its pause as well
            if (stopping || isMachineStopping()) {
                log.info("release {} was stopped with the server; it is built after the next start", release.id());
            } else {
                failed(release, e);
            }
            if (e instanceof Error error) {
                throw error; // who watches over the memory hears of it each time
            }
        }
    }

    private void failed(Release release, Throwable e) {
        int tries = releases.builds().failed(release.id(), BuildState.Failure.of(e), clock.instant());
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
     * Makes all files of a release again, where some that readers have are gone: the same build specification gives the
     * same bytes, and these take their old places. The release itself stays as it is.
     *
     * @throws IOException or a runtime exception where something that it was made of is gone
     */
    public void restore(Release release) throws IOException {
        var build = build(release, List.of(), (done, total) -> true); // nobody follows it, and nothing overtakes it
        with(build, build::files);
        for (var file : releases.files().of(release.id())) {
            if (file.role() == FileRole.ON_REQUEST) {
                onRequest(release, WantedTrack.named(file.name()).orElseThrow());
            }
        }
    }

    /** A practice track that somebody asks for, made and kept; empty where the lesson has no such exercise. */
    public Optional<ReleaseFile> onRequest(Release release, WantedTrack wanted) throws IOException {
        var build = build(release, List.of(), (done, total) -> true);
        if (wanted.line() > build.lesson().exercises().size()) {
            return Optional.empty();
        }
        return with(build, lines -> List.of(build.onRequest(wanted, lines))).stream()
                .findFirst();
    }

    /**
     * What is played of a line without loss; nothing where the lesson has no such line or tempo.
     *
     * @param into where the files go
     */
    public List<ReleaseFile> exact(Release release, ExactStems stems, Blobs into) throws IOException {
        var build = build(release, List.of(), (done, total) -> true);
        return build.plays(stems) ? with(build, lines -> build.exact(stems, lines, into)) : List.of();
    }

    /** The steps in which what is read first of a lesson is drawn, of one that nobody reads. */
    public static List<Runnable> rehearsal(EpisodeDocument document) {
        var spec = new BuildSpec(
                RevisionId.next(),
                1,
                "",
                1,
                "lesson",
                "https://nowhere.invalid/e/1",
                LocalDate.EPOCH,
                BuildSpec.RENDERERS);
        return new LessonFiles(Lesson.of(document), spec)
                .first().stream().<Runnable>map(step -> step::get).toList();
    }

    private Build build(Release release) {
        return build(release, releases.files().of(release.id()), (done, total) -> releases.builds()
                .progress(release.id(), done, total));
    }

    /** @param before what is there already and is not made again */
    private Build build(Release release, List<ReleaseFile> before, Build.Progress progress) {
        var document = revisions.find(release.spec().revision()).orElseThrow().document();
        return new Build(release, document, before, blobs, progress, uploads);
    }

    private List<ReleaseFile> files(Release release) throws IOException {
        var build = build(release);
        return with(build, build::files);
    }

    /** Something that is made with the sound of lines. */
    private interface Sounding {
        List<ReleaseFile> of(List<LineAudio> lines) throws IOException;
    }

    private List<ReleaseFile> with(Build build, Sounding sounding) throws IOException {
        var lines = PlayAlong.lines(build.lesson(), blobs, made);
        try {
            return sounding.of(lines);
        } finally {
            lines.forEach(LineAudio::close);
        }
    }
}
