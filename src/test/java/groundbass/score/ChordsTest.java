package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Ornaments.Spread;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ChordsTest {
    private static Note note(Fraction onset, int string, Optional<Spread> spread) {
        return Note.plucked(onset, Fraction.of(1, 4), Place.of(string, 5), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.withSpread(spread));
    }

    private static List<Optional<Spread>> spreads(Note... notes) {
        return Bar.of(Meter.COMMON, List.of(notes)).notes().stream()
                .map(note -> note.ornaments().spread())
                .toList();
    }

    /** A wave or a bracket belongs to a chord, not to one of its notes (rule: rolled-chord-sign, chord-bracket). */
    @Test
    void whatIsSaidOfOneNoteOfAChordIsSaidOfAll() {
        var roll = Optional.of(Spread.ROLL_DOWN);
        var at = Fraction.of(1, 4);
        assertThat(spreads(note(at, 3, Optional.empty()), note(at, 2, roll), note(at, 1, Optional.empty())))
                .containsExactly(roll, roll, roll);
    }

    @Test
    void aNoteThatBeginsAloneIsNoChord() {
        var bracket = Optional.of(Spread.BRACKET);
        var later = Fraction.of(1, 2);
        assertThat(spreads(
                        note(Fraction.ZERO, 3, bracket),
                        note(later, 2, Optional.empty()),
                        note(later, 1, Optional.empty())))
                .containsExactly(Optional.empty(), Optional.empty(), Optional.empty());
    }
}
