package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.score.Fraction;
import groundbass.score.NoteAt;

/** Where lines vary on purpose (common practice, no source), and how much that weighs. */
final class MeantVariation {
    /** What speaks for a note that stands last in its bar (rule: slip-weights). */
    static final double LAST_NOTE = 0.5;

    private static final double LEADS_ON = 3;
    private static final double TURN = 2;
    private static final double LAST_BAR = 0.5;
    private static final int GROUP = 4;

    private MeantVariation() {}

    /**
     * How much a note may vary where it stands.
     *
     * @param leadsOn whether it leads to the next by a step
     * @param unanimous whether all others leave it as it was, so that half of it counts
     */
    static double freedom(Evidence evidence, NoteAt note, boolean leadsOn, boolean unanimous) {
        double last = isLastOfBar(evidence, note) ? leadsOn ? LEADS_ON : LAST_NOTE : 0;
        return (unanimous ? last / 2 : last)
                + (isTurn(evidence, note) ? TURN : 0)
                + (isLastBar(evidence, note.position().bar()) ? LAST_BAR : 0);
    }

    static boolean isLastOfBar(Evidence evidence, NoteAt note) {
        int number = note.position().bar();
        var notes = evidence.line().bar(number).notes();
        return NoteAt.of(number, notes.get(notes.size() - 1)).equals(note);
    }

    /** In the second half of every fourth bar. */
    static boolean isTurn(Evidence evidence, NoteAt note) {
        return note.position().bar() % GROUP == 0 && isAfter(evidence, note, Fraction.of(1, 2));
    }

    /** In the second half of the last bar. */
    static boolean isEnding(Evidence evidence, NoteAt note) {
        return isLastBar(evidence, note.position().bar()) && isAfter(evidence, note, Fraction.of(1, 2));
    }

    static boolean isLastBar(Evidence evidence, int number) {
        return evidence.line().indexOf(number) == evidence.line().bars().size() - 1;
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
