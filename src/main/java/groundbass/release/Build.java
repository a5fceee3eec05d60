package groundbass.release;

import groundbass.catalog.upload.Uploads;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.Cover;
import groundbass.lesson.Lesson;
import groundbass.release.play.ExactStems;
import groundbass.store.Blobs;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** One building of one release: every file is made and kept, in the order in which a reader is shown them. */
final class Build {
    private static final String ZIP = "application/zip";

    private final BuildSpec spec;
    private final EpisodeDocument document;
    private final Lesson lesson;
    private final LessonFiles making;
    private final NotePhotos photos;
    private final OwnRecordings recordings;
    private final List<Integer> tempos;
    private final List<PracticeTrack> tracks;
    private final List<ReleaseFile> drawnBefore;
    private final List<ReleaseFile> playedBefore;
    private final Blobs blobs;
    private final ArtifactStore artifacts;

    /** Who is told how many steps of how many are done, and says whether to go on. */
    interface Progress {
        boolean goesOn(int done, int total);
    }

    /** @param before what readers have already, where a release is out before all of it is there */
    Build(
            Release release,
            EpisodeDocument document,
            List<ReleaseFile> before,
            Blobs blobs,
            Progress progress,
            Uploads uploads) {
        this.spec = release.spec();
        this.document = document;
        this.lesson = Lesson.of(document);
        this.photos = NotePhotos.of(document.notes(), uploads.pictures(), release.createdAt());
        this.making = new LessonFiles(lesson, photos, spec);
        this.recordings = OwnRecordings.of(document.backingTracks(), uploads, release.createdAt());
        this.tempos = PracticeSet.tempos(lesson);
        this.tracks = PracticeSet.usual(lesson, spec);
        this.drawnBefore = isDrawn(before) ? before(before, false) : List.of();
        this.playedBefore = before(before, true);
        this.blobs = blobs;
        int total = (drawnBefore.isEmpty() ? making.steps().size() : 0)
                + (playedBefore.isEmpty()
                        ? tempos.size() * (1 + lesson.exercises().size())
                        : 0)
                + PracticeSet.steps(
                        tracks.size(),
                        spec.has(Feature.SOUND_OF_EXERCISES)
                                ? lesson.exercises().size()
                                : 0,
                        spec);
        this.artifacts = new ArtifactStore(blobs, done -> progress.goesOn(done, total));
    }

    Lesson lesson() {
        return lesson;
    }

    /** Whether all but sound is there, and not only what is opened first. */
    static boolean isDrawn(List<ReleaseFile> files) {
        return files.stream().anyMatch(file -> file.role() == FileRole.LINE_TEXT);
    }

    /** What a reader opens first. */
    List<ReleaseFile> first() {
        return making.first().parallelStream()
                .map(step -> artifacts.keep(step.get()))
                .toList();
    }

    /** All but sound, the sheet first. */
    List<ReleaseFile> drawn() {
        return drawnBefore.isEmpty()
                ? Stream.concat(making.steps().parallelStream().map(this::kept), photos.files().stream())
                        .toList()
                : drawnBefore;
    }

    /** What the page plays. */
    List<ReleaseFile> played(List<LineAudio> lines) {
        return playedBefore.isEmpty()
                ? new PlayAlong(lines, tempos, recordings.played(), spec).make(artifacts)
                : playedBefore;
    }

    /** Whether the page plays this line at this tempo. */
    boolean plays(ExactStems stems) {
        return stems.line() <= lesson.exercises().size() && tempos.contains(stems.percent());
    }

    /** What the page plays of a line at one tempo, without loss. */
    List<ReleaseFile> exact(ExactStems stems, List<LineAudio> lines, Blobs into) throws IOException {
        return new PlayAlong(lines, tempos, List.of(), spec).exact(lines.get(stems.line()), stems.percent(), into);
    }

    private static List<ReleaseFile> before(List<ReleaseFile> all, boolean played) {
        return all.stream()
                .filter(file -> (file.role() == FileRole.STEM || file.role() == FileRole.PLAY) == played)
                .toList();
    }

    List<ReleaseFile> files(List<LineAudio> lines) throws IOException {
        var drawn = drawn();
        var played = played(lines);
        var practice = practice(lines, drawn.get(0)).make(artifacts);
        var made = new ArrayList<ReleaseFile>();
        made.add(drawn.get(0));
        made.addAll(practice);
        made.addAll(drawn.subList(1, drawn.size()));
        made.addAll(recordings.files());
        var all = bundled(made);
        all.addAll(played);
        return all;
    }

    private ReleaseFile kept(Supplier<Artifact> step) {
        return artifacts.step(() -> artifacts.keep(step.get()));
    }

    private PracticeSet practice(List<LineAudio> lines, ReleaseFile sheet) throws IOException {
        return new PracticeSet(lines, tracks, document, spec, making.messages(), cover(sheet));
    }

    private byte[] cover(ReleaseFile sheet) throws IOException {
        if (spec.has(Feature.CARD_PICTURES)) {
            return Cover.of(lesson.main(), making.messages());
        }
        try (var pdf = blobs.open(sheet.sha256())) {
            return Cover.of(pdf.readAllBytes());
        }
    }

    /** A practice track that somebody asks for. */
    ReleaseFile onRequest(WantedTrack wanted, List<LineAudio> lines) throws IOException {
        var set = new PracticeSet(
                lines, tracks, document, spec, making.messages(), Cover.of(lesson.main(), making.messages()));
        return set.onRequest(wanted, lines.get(wanted.line()));
    }

    /** The bundle first, since it is what most readers want; then the single files, its read-me last. */
    private List<ReleaseFile> bundled(List<ReleaseFile> made) throws IOException {
        var fitting = Bundle.fitting(made);
        var left = made.stream()
                .filter(file -> file.role().isBundled() && !fitting.contains(file))
                .toList();
        var readMe = artifacts.keep(BundleReadMe.of(document, spec, fitting, left, making.messages()));
        if (spec.has(Feature.TRACKS_ON_REQUEST)) {
            made.add(readMe);
            var all = new ArrayList<>(List.of(Bundles.of(spec, made, blobs)));
            all.addAll(made);
            return all;
        }
        var content = new ArrayList<>(List.of(readMe));
        content.addAll(fitting);
        var blob = blobs.put(out -> Bundle.write(spec, content, blobs, out));
        if (blob.length() > Bundle.LARGEST) {
            throw new IllegalStateException("the bundle has " + blob.length() + " bytes");
        }
        var all = new ArrayList<ReleaseFile>();
        all.add(ReleaseFile.of(spec.fileStem() + ".zip", FileRole.BUNDLE, ZIP, blob));
        all.addAll(made);
        all.add(readMe);
        return all;
    }
}
