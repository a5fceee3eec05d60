package groundbass.release;

import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.release.play.LineStems;
import groundbass.release.play.PlayJson;
import groundbass.release.play.PlayManifest;
import groundbass.score.Line;
import groundbass.sound.SampleRate;
import groundbass.sound.Stem;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * One line of a lesson as the page plays it.
 *
 * @param name the line's name among the release's files
 * @param stems one for each tempo that is offered, slowest first
 */
record PlayAlong(String name, Line line, List<LineStems> stems) {
    private static final String FLAC = "audio/flac"; // RFC 9639, section 11.2

    /** The main line first, then the exercises. */
    static List<PlayAlong> of(Lesson lesson) {
        var tempos = tempos(lesson);
        var all = new ArrayList<PlayAlong>();
        all.add(of("line", lesson.main(), lesson.groove(), tempos));
        for (int i = 0; i < lesson.exercises().size(); i++) {
            var exercise = lesson.exercises().get(i);
            all.add(of(ReleaseFile.exerciseStem(i + 1), exercise, GrooveLibrary.suited(exercise), tempos));
        }
        return all;
    }

    private static PlayAlong of(String name, Line line, Groove groove, List<Integer> tempos) {
        return new PlayAlong(
                name,
                line,
                tempos.stream()
                        .map(percent -> new LineStems(name, line, groove, percent, 1))
                        .toList());
    }

    /** Those that the educator asks for, and the tempo that the line is written for. */
    private static List<Integer> tempos(Lesson lesson) {
        return Stream.concat(lesson.document().settings().tempoPercents().stream(), Stream.of(PracticeTrack.WHOLE))
                .distinct()
                .sorted()
                .toList();
    }

    Rendered manifest(List<LineStems.Written> written) {
        var manifest = new PlayManifest(
                PlayManifest.FORM,
                name,
                line.header().title(),
                SampleRate.CD.hertz(),
                Stream.of(Stem.values()).map(Stem::word).toList(),
                written.stream().map(LineStems.Written::tempo).toList(),
                List.of());
        return new Rendered(name + "-play.json", FileRole.PLAY, "application/json", PlayJson.write(manifest));
    }

    /** The stems as files of the release. */
    Stream<ReleaseFile> files(List<LineStems.Written> written) {
        return written.stream()
                .flatMap(tempo -> tempo.files().entrySet().stream())
                .map(file -> new ReleaseFile(
                        file.getKey(),
                        FileRole.STEM,
                        FLAC,
                        file.getValue().length(),
                        file.getValue().sha256()));
    }
}
