package groundbass.lesson;

import groundbass.document.EpisodeDocument;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.score.Line;
import java.util.List;
import java.util.Optional;

/**
 * A document whose texts were read, each once, with what is wrong in them: what a check of the whole works from.
 *
 * @param groove the drums that were typed; empty where none were
 */
public record LessonText(
        EpisodeDocument document,
        Reading main,
        List<Reading> exercises,
        Optional<groundbass.groove.GrooveReading> groove) {
    public LessonText {
        exercises = List.copyOf(exercises);
    }

    public static LessonText read(EpisodeDocument document) {
        String drums = document.groove().text();
        return new LessonText(
                document,
                LineText.read(document.mainLine().text()),
                document.exercises().stream()
                        .map(exercise -> LineText.read(exercise.text()))
                        .toList(),
                drums.isBlank() ? Optional.empty() : Optional.of(GrooveText.read(drums)));
    }

    /** What the renderers work from; a text with mistakes gives what of it can be read. */
    public Lesson lesson() {
        var lines = exercises.stream().map(Reading::line).toList();
        return new Lesson(document, main.line(), lines, drums(main.line()));
    }

    /** The drums that were typed, else those that were named, else what suits the line. */
    private Groove drums(Line line) {
        return groove.flatMap(groundbass.groove.GrooveReading::groove)
                .or(() -> GrooveLibrary.named(document.groove().name()))
                .orElseGet(() -> GrooveLibrary.suited(line))
                .withFeel(document.groove().feelPercent())
                .withInstruments(document.groove().instruments());
    }
}
