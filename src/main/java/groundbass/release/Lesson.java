package groundbass.release;

import groundbass.catalog.EpisodeDocument;
import groundbass.catalog.GrooveSource;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.List;
import java.util.Optional;

/** A document whose texts have been read: what the renderers work from. */
public record Lesson(EpisodeDocument document, Line main, List<Line> exercises, Groove groove) {
    public Lesson {
        exercises = List.copyOf(exercises);
    }

    /** Reads whatever was typed; a text with mistakes gives what of it can be read. */
    public static Lesson of(EpisodeDocument document) {
        var main = LineText.read(document.mainLine().text()).line();
        var exercises = document.exercises().stream()
                .map(exercise -> LineText.read(exercise.text()).line())
                .toList();
        return new Lesson(document, main, exercises, groove(document.groove(), main));
    }

    /** The drums that were typed, else those that were named, else what suits the line. */
    private static Groove groove(GrooveSource source, Line line) {
        var typed = source.text().isBlank()
                ? Optional.<Groove>empty()
                : GrooveText.read(source.text()).groove();
        return typed.or(() -> GrooveLibrary.named(source.name())).orElseGet(() -> GrooveLibrary.suited(line));
    }
}
