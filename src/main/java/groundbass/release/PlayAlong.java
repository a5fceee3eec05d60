package groundbass.release;

import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.lesson.Lesson;
import groundbass.release.play.NeckPlaces;
import groundbass.release.play.PlayJson;
import groundbass.release.play.PlayManifest;
import groundbass.release.play.PlayManifest.Section;
import groundbass.release.play.PlayManifest.Tempo;
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
    private static final String FLAC = "audio/flac"; // RFC 9639, section 11.2
    private static final String OPUS = "audio/ogg; codecs=opus"; // RFC 7845, section 9

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
        return GrooveLibrary.suited(exercise).steady().withFeel(lesson.groove().feel());
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
        files.add(artifacts.keep(manifest(line, made.stream().map(Made::tempo).toList())));
        made.forEach(tempo -> files.addAll(tempo.files()));
        return files;
    }

    private Made made(LineAudio line, int percent) throws IOException {
        var plain = line.stems(percent);
        var files = stems(plain.files(), FLAC);
        if (!spec.has(Feature.SMALL_SOUND)) {
            return new Made(plain.tempo(), files);
        }
        var small = line.smallStems(percent);
        files.addAll(stems(small.files(), OPUS));
        return new Made(plain.tempo().with(small.stems()), files);
    }

    private static List<ReleaseFile> stems(Map<String, Blob> blobs, String mediaType) {
        var files = new ArrayList<ReleaseFile>();
        blobs.forEach((name, blob) -> files.add(ReleaseFile.of(name, FileRole.STEM, mediaType, blob)));
        return files;
    }

    private Artifact manifest(LineAudio line, List<Tempo> written) {
        var manifest = new PlayManifest(
                PlayManifest.FORM,
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
        return new Artifact(line.name() + "-play.json", FileRole.PLAY, "application/json", PlayJson.write(manifest));
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
