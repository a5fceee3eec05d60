package groundbass.lesson;

import groundbass.document.EpisodeDocument;
import groundbass.groove.Groove;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Technique;
import groundbass.text.Messages;
import groundbass.walkthrough.Anchor;
import groundbass.walkthrough.Retelling;
import groundbass.walkthrough.Retelling.Edit;
import groundbass.walkthrough.Walkthrough;
import groundbass.walkthrough.words.Naming;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A document whose texts have been read: what the renderers work from. */
public record Lesson(EpisodeDocument document, Line main, List<Line> exercises, Groove groove) {
    public Lesson {
        exercises = List.copyOf(exercises);
    }

    /** Reads whatever was typed; a text with mistakes gives what of it can be read. */
    public static Lesson of(EpisodeDocument document) {
        return LessonText.read(document).lesson();
    }

    /** The plucking hand's techniques in the main line, by line text's words. */
    public List<String> techniques() {
        return main.bars().stream()
                .flatMap(bar -> bar.notes().stream())
                .map(Note::pluck)
                .flatMap(Optional::stream)
                .distinct()
                .sorted()
                .map(Technique::word)
                .toList();
    }

    /** The main line (0) or an exercise (from 1) told in the lesson's language, with the educator's words where given. */
    public Retelling walkthrough(int line) {
        return walkthrough(line, Locale.forLanguageTag(document.settings().language()));
    }

    /** The same in another language; the educator's words stay in theirs. */
    public Retelling walkthrough(int line, Locale language) {
        var settings = document.settings();
        var messages = Messages.of(language);
        var naming = Naming.parse(settings.naming()).orElse(Naming.USUAL);
        var told = Walkthrough.of(line == 0 ? main : exercises.get(line - 1), messages, naming);
        return Retelling.of(told, edits(line));
    }

    /** What could not have been anchored is passed over: it was not written by this program. */
    private List<Edit> edits(int line) {
        return document.walkthroughEdits().stream()
                .filter(edit -> edit.line() == line)
                .flatMap(edit ->
                        Anchor.parse(edit.anchor())
                                .map(anchor -> new Edit(anchor, edit.bar(), edit.sentence()))
                                .stream())
                .toList();
    }
}
