package groundbass.checks;

import groundbass.score.Fraction;
import groundbass.score.NoteAt;

/** Where lines vary on purpose (common practice, no source). */
final class Variation {
    private static final int GROUP = 4;

    private Variation() {}

    /** In the second half of every fourth bar. */
    static boolean isTurn(Evidence evidence, NoteAt note) {
        return note.position().bar() % GROUP == 0 && isAfter(evidence, note, Fraction.of(1, 2));
    }

    /** In the second half of the last bar. */
    static boolean isEnding(Evidence evidence, NoteAt note) {
        var line = evidence.line();
        return line.indexOf(note.position().bar()) == line.bars().size() - 1
                && isAfter(evidence, note, Fraction.of(1, 2));
    }

    /** In the last quarter of its bar, where the next is prepared. */
    static boolean isLate(Evidence evidence, NoteAt note) {
        return isAfter(evidence, note, Fraction.of(3, 4));
    }

    /** After a chord that begins inside the bar, with which its rhythm may change. */
    static boolean isAfterChange(Evidence evidence, NoteAt note) {
        return evidence.line().bar(note.position().bar()).chords().stream()
                .anyMatch(chord -> chord.at().isPositive()
                        && !chord.at().isAfter(note.position().at()));
    }

    private static boolean isAfter(Evidence evidence, NoteAt note, Fraction share) {
        var bar = evidence.line().bar(note.position().bar());
        return !note.position().at().isBefore(bar.length().times(share));
    }
}
