package groundbass.analysis;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pitched notes that begin at one moment of the written line.
 *
 * @param at from the start of the line, as if played straight through, in whole notes
 */
record Onset(Fraction at, Position position, InForce inForce, Optional<Chord> chord, List<Sounding> notes) {
    /** A note with its MIDI number. */
    record Sounding(Note note, NoteAt at, int midi) {}

    Onset {
        notes = List.copyOf(notes);
    }

    Key key() {
        return inForce.key();
    }

    Fraction end() {
        return at.plus(notes.stream()
                .map(each -> each.note().length())
                .reduce(Fraction::max)
                .orElseThrow());
    }

    /** All onsets of a line that have a pitch, in written order. */
    static List<Onset> of(Line line) {
        var all = new ArrayList<Onset>();
        var inForce = line.inForce();
        var start = Fraction.ZERO;
        Optional<ChordSymbol> holds = Optional.empty();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var notes = bar.notes();
            int next = 0;
            int chord = 0;
            while (next < notes.size()) {
                var onset = notes.get(next).onset();
                while (chord < bar.chords().size()
                        && !bar.chords().get(chord).at().isAfter(onset)) {
                    holds = Optional.of(bar.chords().get(chord++).chord());
                }
                int from = next;
                while (next < notes.size() && notes.get(next).onset().equals(onset)) {
                    next++;
                }
                var sounding = sounding(line, inForce.get(i).number(), notes.subList(from, next));
                if (!sounding.isEmpty()) {
                    var at = start.plus(onset).minus(bar.from());
                    var position = new Position(inForce.get(i).number(), onset);
                    all.add(new Onset(at, position, inForce.get(i), chord(holds), sounding));
                }
            }
            if (chord < bar.chords().size()) {
                holds = Optional.of(bar.chords().get(bar.chords().size() - 1).chord());
            }
            start = start.plus(bar.length());
        }
        return List.copyOf(all);
    }

    private static Optional<Chord> chord(Optional<ChordSymbol> symbol) {
        return symbol.filter(Chord.class::isInstance).map(Chord.class::cast);
    }

    private static List<Sounding> sounding(Line line, int bar, List<Note> notes) {
        var sounding = new ArrayList<Sounding>();
        for (var note : notes) {
            note.midi(line.header().tuning())
                    .ifPresent(midi -> sounding.add(new Sounding(note, NoteAt.of(bar, note), midi)));
        }
        return sounding;
    }
}
