package groundbass.web.desk.editor;

import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.web.desk.editor.EditorView.Difference;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Tells what another window saved, field by field, where it is not what was typed here. */
final class Differences {
    private final EpisodeDocument stored;
    private final EpisodeDocument typed;
    private final List<Difference> found = new ArrayList<>();

    private Differences(EpisodeDocument stored, EpisodeDocument typed) {
        this.stored = stored;
        this.typed = typed;
    }

    static List<Difference> between(EpisodeDocument stored, EpisodeDocument typed) {
        var differences = new Differences(stored, typed);
        differences.compare();
        return List.copyOf(differences.found);
    }

    private void compare() {
        field("title", "desk.episode.title", EpisodeDocument::title);
        field("level", "desk.episode.level", document -> document.level().code());
        field("summary", "desk.editor.summary", EpisodeDocument::summary);
        field("mainLine", "desk.editor.line", document -> document.mainLine().text());
        exercises();
        field("notes", "desk.editor.notes", EpisodeDocument::notes);
        field("grooveName", "desk.editor.groove.name", document -> document.groove()
                .name());
        field("groove", "desk.editor.groove", document -> document.groove().text());
        field("rights.composer", "desk.editor.composer", document -> document.rights()
                .composer());
        field("rights.credit", "desk.editor.credit", document -> document.rights()
                .credit());
        field("rights.statement", "desk.editor.statement", document -> document.rights()
                .statement());
        field("rights.clearance", "desk.facts.clearance", document -> document.rights()
                .clearance()
                .word());
        field("settings.tempos", "desk.editor.tempos", document -> document.settings()
                .tempos());
        field("settings.rounds", "desk.editor.rounds", document -> document.settings()
                .rounds());
        field("", "desk.tracks.title", Differences::tracks);
    }

    /** One by one where there are as many as before. */
    private void exercises() {
        int count = typed.exercises().size();
        if (stored.exercises().size() != count) {
            field("", "desk.editor.exercises", document -> lines(document.exercises()));
            return;
        }
        for (int i = 0; i < count; i++) {
            int place = i;
            String name = "exercise-name-" + i;
            field(name, "desk.editor.exercises", document -> document.exercises()
                    .get(place)
                    .name());
            field("exercises-" + i, "desk.editor.exercises", document -> document.exercises()
                    .get(place)
                    .text());
        }
    }

    private void field(String id, String label, Function<EpisodeDocument, String> of) {
        String there = of.apply(stored);
        if (!sameLines(there, of.apply(typed))) {
            found.add(new Difference(id, label, there));
        }
    }

    /** A browser sends line ends as CR LF (HTML standard, "constructing the entry list"), whatever was stored. */
    private static boolean sameLines(String a, String b) {
        return a.replace("\r\n", "\n").equals(b.replace("\r\n", "\n"));
    }

    private static String lines(List<LineSource> lines) {
        return lines.stream().map(line -> line.name() + "\n" + line.text()).collect(Collectors.joining("\n\n"));
    }

    private static String tracks(EpisodeDocument document) {
        return document.backingTracks().stream().map(track -> track.title()).collect(Collectors.joining("\n"));
    }
}
