package groundbass.checks.finding;

import groundbass.remark.Suggestion;
import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A change that would answer a finding.
 *
 * @param label what a button says: what would stand there, as it is typed
 * @param edits the notes to change, each once
 */
public record Repair(Message label, List<Edit> edits) implements Suggestion {
    /** One note and what it becomes; the note keeps its time. */
    public record Edit(NoteAt note, NoteChange change) {
        public Edit {
            Objects.requireNonNull(note);
            Objects.requireNonNull(change);
        }
    }

    public Repair {
        Objects.requireNonNull(label);
        edits = List.copyOf(edits);
    }

    public static Repair of(Message label, NoteAt note, NoteChange change) {
        return new Repair(label, List.of(new Edit(note, change)));
    }

    /**
     * The line with these notes changed. A bar that was written as a copy of another is written out where its notes
     * change.
     *
     * @throws IllegalArgumentException where the line has changed so that the result would be none
     */
    public Line applyTo(Line line) {
        var changes = edits.stream().collect(Collectors.toMap(Edit::note, Edit::change));
        var bars = new ArrayList<Bar>();
        for (var bar : line.bars()) {
            int number = line.firstNumber() + bars.size();
            bars.add(changed(bar, number, changes));
        }
        return new Line(line.header(), bars);
    }

    private static Bar changed(Bar bar, int number, Map<NoteAt, NoteChange> changes) {
        var notes = bar.notes().stream()
                .map(note -> changed(note, NoteAt.of(number, note), changes))
                .toList();
        return notes.equals(bar.notes()) ? bar : bar.withNotes(notes).writtenOut();
    }

    private static Note changed(Note note, NoteAt at, Map<NoteAt, NoteChange> changes) {
        return changes.containsKey(at) ? changes.get(at).of(note) : note;
    }
}
