package groundbass.analysis;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
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
}
