package groundbass.analysis;

import groundbass.analysis.Onset.Sounding;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Harmony;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.List;

/** Walks through a line in written order and gathers its pitches by moment, each with the chord that holds there. */
final class Onsets {
    private final Line line;
    private final List<Onset> found = new ArrayList<>();
    private final Harmony harmony;
    private Fraction start = Fraction.ZERO;

    private Onsets(Line line) {
        this.line = line;
        this.harmony = new Harmony(line);
    }

    /** All moments of a line at which something with a pitch begins. */
    static List<Onset> of(Line line) {
        var onsets = new Onsets(line);
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            onsets.bar(line.bars().get(i), inForce.get(i));
        }
        return List.copyOf(onsets.found);
    }

    private void bar(Bar bar, InForce inForce) {
        var notes = bar.notes();
        int next = 0;
        while (next < notes.size()) {
            int from = next;
            var at = notes.get(from).onset();
            while (next < notes.size() && notes.get(next).onset().equals(at)) {
                next++;
            }
            onset(bar, inForce, notes.subList(from, next));
        }
        start = start.plus(bar.length());
    }

    private void onset(Bar bar, InForce inForce, List<Note> notes) {
        var at = notes.get(0).onset();
        var sounding = sounding(inForce.number(), notes);
        if (!sounding.isEmpty()) {
            var chord = harmony.at(line.indexOf(inForce.number()), at);
            var position = new Position(inForce.number(), at);
            found.add(new Onset(start.plus(at).minus(bar.from()), position, inForce, chord, sounding));
        }
    }

    private List<Sounding> sounding(int bar, List<Note> notes) {
        var sounding = new ArrayList<Sounding>();
        for (var note : notes) {
            note.midi(line.header().tuning())
                    .ifPresent(midi -> sounding.add(new Sounding(note, NoteAt.of(bar, note), midi)));
        }
        return sounding;
    }
}
