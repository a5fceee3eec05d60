package groundbass.release;

import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.lesson.Lesson;
import groundbass.release.play.ExactStems;
import groundbass.release.play.NeckPlaces;
import groundbass.release.play.PlayJson;
import groundbass.release.play.PlayManifest;
import groundbass.release.play.PlayManifest.Section;
import groundbass.release.play.PlayManifest.Tempo;
import groundbass.release.play.StemForm;
import groundbass.score.Line;
import groundbass.signal.SampleRate;
import groundbass.sound.mix.Mastering;
import groundbass.sound.mix.Stem;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the page of a lesson plays: each of its lines at each tempo that is offered. */
final class PlayAlong {
    /** Of manifests before there was a smaller form. */
    private static final int FIRST_FORM = 1;

    private final List<LineAudio> lines;
    private final List<Integer> tempos;
    private final List<PlayManifest.OwnTrack> tracks;
    private final BuildSpec spec;

    /** @param lines the main line first */
    PlayAlong(List<LineAudio> lines, List<Integer> tempos, List<PlayManifest.OwnTrack> tracks, BuildSpec spec) {
        this.lines = List.copyOf(lines);
        this.tempos = List.copyOf(tempos);
        this.tracks = List.copyOf(tracks);
        this.spec = spec;
    }

    /** The main line first, then the exercises. */
    static List<LineAudio> lines(Lesson lesson, Blobs blobs, MadeAudio made) {
        var lines = new ArrayList<LineAudio>();
        lines.add(new LineAudio("line", lesson.main(), lesson.groove(), blobs, made));
        for (int i = 0; i < lesson.exercises().size(); i++) {
            var exercise = lesson.exercises().get(i);
            String name = ReleaseFile.exerciseStem(i + 1);
            lines.add(new LineAudio(name, exercise, band(lesson, exercise), blobs, made));
        }
        return lines;
    }

    /** An exercise has what suits it, steadily, and played as the line's drums are. */
    static Groove band(Lesson lesson, Line exercise) {
        return GrooveLibrary.suited(exercise)
                .steady()
                .withFeel(lesson.groove().feel())
                .withInstruments(lesson.groove().instruments());
    }

    /** The stems, then the manifests that name them. */
    List<ReleaseFile> make(ArtifactStore artifacts) {
        return lines.stream().flatMap(line -> make(line, artifacts).stream()).toList();
    }

    /** A line at one tempo: what the manifest says of it, and the files that it names. */
    private record Made(Tempo tempo, List<ReleaseFile> files) {}

    private List<ReleaseFile> make(LineAudio line, ArtifactStore artifacts) {
        var made = tempos.parallelStream()
                .map(percent -> artifacts.step(() -> made(line, percent)))
                .toList();
        var files = new ArrayList<ReleaseFile>();
        files.add(artifacts.keep(manifest(
                line.name() + "-play.json", line, made.stream().map(Made::tempo).toList())));
        made.forEach(tempo -> files.addAll(tempo.files()));
        return files;
    }

    private Made made(LineAudio line, int percent) throws IOException {
        var form = spec.has(Feature.SMALL_SOUND) ? StemForm.SMALL : StemForm.EXACT;
        var written = line.stems(percent, form);
        var tempo = spec.has(Feature.SMALL_SOUND)
                ? written.tempo().withExact(ExactStems.manifest(line.name(), percent))
                : written.tempo();
        return new Made(tempo, stems(written.files(), form));
    }

    private static List<ReleaseFile> stems(Map<String, Blob> blobs, StemForm form) {
        var files = new ArrayList<ReleaseFile>();
        blobs.forEach((name, blob) -> files.add(ReleaseFile.of(name, FileRole.STEM, form.mediaType(), blob)));
        return files;
    }

    /**
     * A line at one tempo without loss: a manifest of this tempo alone, and the stems that it names. Their names say what is
     * in them, so that a manifest is never read with stems of another program's.
     */
    List<ReleaseFile> exact(LineAudio line, int percent, Blobs into) throws IOException {
        var artifacts = new ArtifactStore(into, done -> true);
        var written = line.exactStems(percent, into);
        var tempo = written.tempo()
                .renamed(name -> ExactStems.named(name, written.files().get(name)));
        var files = new ArrayList<ReleaseFile>();
        files.add(artifacts.keep(manifest(ExactStems.manifest(line.name(), percent), line, List.of(tempo))));
        written.files()
                .forEach((name, blob) -> files.add(
                        ReleaseFile.of(ExactStems.named(name, blob), FileRole.STEM, StemForm.EXACT.mediaType(), blob)));
        return files;
    }

    private Artifact manifest(String name, LineAudio line, List<Tempo> written) {
        var manifest = new PlayManifest(
                spec.has(Feature.SMALL_SOUND) ? PlayManifest.FORM : FIRST_FORM,
                line.name(),
                line.line().header().title(),
                SampleRate.CD.hertz(),
                Mastering.HEADROOM,
                Stream.of(Stem.values()).map(Stem::word).toList(),
                written,
                line == lines.get(0) ? tracks : List.of(),
                spec.has(Feature.SECTIONS) ? sections(line.line()) : List.of(),
                spec.has(Feature.NECK) ? strings(line.line()) : List.of(),
                spec.has(Feature.NECK) ? NeckPlaces.of(line.line()) : List.of());
        return new Artifact(name, FileRole.PLAY, "application/json", PlayJson.write(manifest));
    }

    private static List<String> strings(Line line) {
        return line.header().tuning().strings().stream()
                .map(string -> string.name().toString())
                .toList();
    }

    private static List<Section> sections(Line line) {
        return IntStream.range(0, line.bars().size())
                .boxed()
                .flatMap(i -> line.bars().get(i).changes().section().stream()
                        .map(name -> new Section(name, line.firstNumber() + i)))
                .toList();
    }
}
