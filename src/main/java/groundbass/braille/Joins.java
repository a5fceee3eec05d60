package groundbass.braille;

import groundbass.score.Arrival.Kind;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.writing.Head;
import java.util.HashMap;
import java.util.Map;

/** What the fretting hand does between a note and the next one of its string, as cells behind the first of them. */
final class Joins {
    private final Map<NoteAt, Cells> outOf = new HashMap<>();

    private Joins() {}

    static Joins of(Line line) {
        var joins = new Joins();
        var last = new HashMap<Integer, NoteAt>();
        for (int i = 0; i < line.bars().size(); i++) {
            for (var note : line.bars().get(i).notes()) {
                var here = NoteAt.of(line.firstNumber() + i, note);
                var before = last.put(note.string(), here);
                var arrival = note.arrival().filter(each -> !each.isGrace());
                if (before != null && arrival.isPresent()) {
                    joins.outOf.put(
                            before, cells(arrival.get().kind(), note.pluck().isEmpty()));
                }
            }
        }
        return joins;
    }

    /** A slur where no new stroke sounds the next note, a line where the finger slides (rule: braille-slur-and-slide). */
    private static Cells cells(Kind kind, boolean slurred) {
        var slur = slurred ? BrailleSigns.SLUR : Cells.NONE;
        return kind == Kind.SLIDE ? slur.plus(BrailleSigns.SLIDE) : slur;
    }

    /** Behind the last of tied heads. */
    Cells outOf(Head head) {
        return head.tiedTo() ? Cells.NONE : outOf.getOrDefault(NoteAt.of(head.noteBar(), head.note()), Cells.NONE);
    }
}
