package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import java.util.ArrayList;
import java.util.List;

/** Cuts every note at the bar lines it is held over (rule: tie-over-barline). */
final class Parts {
    private final List<List<BarShare>> bars = new ArrayList<>();
    private List<Held> held = List.of();

    /** A note on its way into the next bar, and how much of it is left. */
    private record Held(Note note, int noteBar, Spelled spelled, Fraction left) {}

    private Parts() {}

    /** What sounds in each bar, by onset. */
    static List<List<BarShare>> of(Line line) {
        var parts = new Parts();
        var spellings = Spellings.of(line);
        for (int i = 0; i < line.bars().size(); i++) {
            parts.add(line.bars().get(i), line.firstNumber() + i, spellings.get(i));
        }
        return parts.bars;
    }

    private void add(Bar bar, int number, List<Spelled> spelled) {
        var sounding = new ArrayList<BarShare>();
        var leaving = new ArrayList<Held>();
        for (var each : held) {
            cut(bar, bar.from(), each, sounding, leaving);
        }
        for (int i = 0; i < bar.notes().size(); i++) {
            var note = bar.notes().get(i);
            cut(bar, note.onset(), new Held(note, number, spelled.get(i), note.length()), sounding, leaving);
        }
        bars.add(sounding);
        held = leaving;
    }

    private static void cut(Bar bar, Fraction from, Held held, List<BarShare> sounding, List<Held> leaving) {
        var note = held.note();
        var room = bar.to().minus(from);
        boolean goesOn = held.left().isAfter(room);
        boolean fromBefore = held.left().isBefore(note.length());
        var to = from.plus(held.left().min(room));
        sounding.add(new BarShare(note, held.noteBar(), held.spelled(), from, to, fromBefore, goesOn));
        if (goesOn) {
            leaving.add(
                    new Held(note, held.noteBar(), held.spelled(), held.left().minus(room)));
        }
    }
}
