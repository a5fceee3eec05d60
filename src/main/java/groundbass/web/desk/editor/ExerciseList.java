package groundbass.web.desk.editor;

import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.document.WalkthroughEdit;
import java.util.ArrayList;
import java.util.List;

/** Adds exercises to a lesson and takes them out. Words of the walkthrough go along with their line. */
final class ExerciseList {
    private ExerciseList() {}

    static EpisodeDocument withOneMore(EpisodeDocument document) {
        var more = new ArrayList<>(document.exercises());
        more.add(LineSource.EMPTY);
        return document.edit().exercises(more).done();
    }

    /** Without the exercise of that place, from 0; unchanged where there is none. */
    static EpisodeDocument without(EpisodeDocument document, int place) {
        if (place >= document.exercises().size()) {
            return document;
        }
        var fewer = new ArrayList<>(document.exercises());
        fewer.remove(place);
        return document.edit()
                .exercises(fewer)
                .walkthroughEdits(without(document.walkthroughEdits(), place + 1))
                .done();
    }

    /** Lines are counted from the main one, which is 0. */
    private static List<WalkthroughEdit> without(List<WalkthroughEdit> edits, int line) {
        return edits.stream()
                .filter(edit -> edit.line() != line)
                .map(edit -> edit.line() < line
                        ? edit
                        : new WalkthroughEdit(edit.line() - 1, edit.anchor(), edit.bar(), edit.sentence()))
                .toList();
    }
}
