package groundbass.web.desk.editor;

import groundbass.text.Message;
import groundbass.web.desk.calendar.PreflightView;
import java.util.List;

/** The parts of a lesson at the desk, each with the way to it and what is to be done there before it goes out. */
final class LessonParts {
    private static final List<Place> PLACES = List.of(
            new Place("desk.editor.line", "#line-head", "mainLine"),
            new Place("desk.editor.lesson", "#lesson-head", "title", "level", "summary", "number"),
            new Place("desk.editor.exercises", "#exercises-head", "exercises"),
            new Place("desk.editor.notes", "#notes-head", "notes"),
            new Place("desk.editor.band", "#groove-head", "groove"),
            new Place("desk.tracks.title", "#tracks-head", "tracks"),
            new Place("desk.editor.rights", "#rights-head", "rights"),
            new Place("desk.editor.files", "#files-head", "settings"),
            new Place("desk.facts.title", "/facts", "facts"),
            new Place("desk.walkthrough.title", "/walkthrough", "walkthrough"),
            new Place("desk.script.title", "/script"),
            new Place("desk.publish.title", "#publish-head", "address", "imprint"));

    private LessonParts() {}

    /** @param way an anchor of the editor's page, or the rest of the address of another */
    private record Place(String title, String way, List<String> fields) {
        Place(String title, String way, String... fields) {
            this(title, way, List.of(fields));
        }

        boolean holds(PreflightView.Row row) {
            return fields.stream().anyMatch(field -> row.field().matches(field + "([.\\[].*)?"));
        }

        EditorPart part(String path, PreflightView preflight) {
            String there = way.startsWith("#") ? way : path + way;
            if (preflight.blocking().stream().anyMatch(this::holds)) {
                return new EditorPart(Message.of(title), there, EditorPart.State.OPEN);
            }
            boolean asks = preflight.asking().stream().anyMatch(this::holds);
            return new EditorPart(Message.of(title), there, asks ? EditorPart.State.LOOK : EditorPart.State.CLEAR);
        }
    }

    static List<EditorPart> of(String path, PreflightView preflight) {
        return PLACES.stream().map(place -> place.part(path, preflight)).toList();
    }
}
