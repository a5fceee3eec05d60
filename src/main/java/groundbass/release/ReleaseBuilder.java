package groundbass.release;

import groundbass.catalog.BackingTrack;
import groundbass.catalog.EpisodeDocument;
import groundbass.catalog.Revisions;
import groundbass.catalog.Slug;
import groundbass.catalog.Upload;
import groundbass.catalog.Uploads;
import groundbass.release.play.LineStems;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Builds a release: makes every file, keeps it, and closes the release with their names. Building one that is closed
 * already does nothing; what fails is told on the desk and in the log.
 */
public final class ReleaseBuilder {
    private static final Logger log = LoggerFactory.getLogger(ReleaseBuilder.class);
    private static final String ZIP = "application/zip";
    private static final Slug TRACK = new Slug("track");

    private final Releases releases;
    private final Revisions revisions;
    private final Uploads uploads;
    private final Blobs blobs;
    private final Clock clock;
    private final Map<ReleaseId, Object> building = new ConcurrentHashMap<>();

    public ReleaseBuilder(Releases releases, Revisions revisions, Uploads uploads, Blobs blobs, Clock clock) {
        this.releases = releases;
        this.revisions = revisions;
        this.uploads = uploads;
        this.blobs = blobs;
        this.clock = clock;
    }

    /** When this returns the release is closed, whoever built it: a second caller waits for the first. */
    public void build(ReleaseId id) {
        synchronized (building.computeIfAbsent(id, any -> new Object())) {
            var release = releases.find(id).orElseThrow();
            if (!release.isReady() && !release.isFailed()) {
                close(release);
            }
        }
        building.remove(id);
    }

    private void close(Release release) {
        try {
            releases.ready(release.id(), files(release), clock.instant());
        } catch (IOException | RuntimeException e) {
            log.error("release {} cannot be built", release.id(), e);
            releases.failed(release.id(), String.valueOf(e.getMessage()));
        }
    }

    private List<ReleaseFile> files(Release release) throws IOException {
        var recipe = release.recipe();
        var document = revisions.find(recipe.revision()).orElseThrow().document();
        var lesson = Lesson.of(document);
        var making = new LessonFiles(lesson, recipe);
        var steps = making.steps();
        var lines = PlayAlong.of(lesson);
        int tempos = lines.stream().mapToInt(line -> line.stems().size()).sum();
        var progress = new Steps(release.id(), tempos + steps.size());
        var played = play(lines, progress);
        var made = make(steps, progress);
        made.addAll(ownTracks(document.backingTracks()));
        var all = bundled(document, recipe, made, making);
        all.addAll(played);
        return all;
    }

    /** Tells how far a build is. */
    private final class Steps {
        private final ReleaseId id;
        private final int total;
        private final AtomicInteger done = new AtomicInteger();

        Steps(ReleaseId id, int total) {
            this.id = id;
            this.total = total;
        }

        void next() {
            releases.progress(id, done.incrementAndGet(), total);
        }
    }

    /** What the page plays comes first: it is what students wait for. */
    private List<ReleaseFile> play(List<PlayAlong> lines, Steps steps) {
        return lines.stream()
                .flatMap(line -> {
                    var written = line.stems().parallelStream()
                            .map(stems -> write(stems, steps))
                            .toList();
                    return Stream.concat(Stream.of(keep(line.manifest(written))), line.files(written));
                })
                .toList();
    }

    private LineStems.Written write(LineStems stems, Steps steps) {
        try {
            var written = stems.write(blobs);
            steps.next();
            return written;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** On all cores, since sound takes long to encode; the files come out in the order of their steps. */
    private List<ReleaseFile> make(List<Supplier<Rendered>> steps, Steps progress) {
        return steps.parallelStream()
                .map(step -> {
                    var file = keep(step.get());
                    progress.next();
                    return file;
                })
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /** The bundle first, since it is what most readers want; then its read-me and the single files. */
    private List<ReleaseFile> bundled(
            EpisodeDocument document, Recipe recipe, List<ReleaseFile> made, LessonFiles making) throws IOException {
        var fitting = Bundle.fitting(made);
        var left = made.stream()
                .filter(file -> file.role().isBundled() && !fitting.contains(file))
                .toList();
        var readMe = keep(ReadMe.of(document, recipe, fitting, left, making.messages()));
        var content = new ArrayList<>(List.of(readMe));
        content.addAll(fitting);
        var blob = blobs.put(out -> Bundle.write(content, blobs, out));
        var all = new ArrayList<ReleaseFile>();
        all.add(new ReleaseFile(recipe.fileStem() + ".zip", FileRole.BUNDLE, ZIP, blob.length(), blob.sha256()));
        all.addAll(made);
        all.add(readMe);
        return all;
    }

    private ReleaseFile keep(Rendered file) {
        try {
            var blob = blobs.put(file.bytes());
            return new ReleaseFile(file.name(), file.role(), file.mediaType(), blob.length(), blob.sha256());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<ReleaseFile> ownTracks(List<BackingTrack> tracks) {
        var files = new ArrayList<ReleaseFile>();
        for (var track : tracks) {
            uploads.find(track.upload()).ifPresent(upload -> files.add(ownTrack(files.size() + 1, track, upload)));
        }
        return files;
    }

    private static ReleaseFile ownTrack(int number, BackingTrack track, Upload upload) {
        String ending = upload.mediaType().equals("audio/mpeg") ? "mp3" : "wav";
        String name = "own-%d-%s.%s".formatted(number, Slug.of(track.title(), TRACK), ending);
        return new ReleaseFile(
                name,
                FileRole.OWN_TRACK,
                upload.mediaType(),
                upload.blob().length(),
                upload.blob().sha256());
    }
}
