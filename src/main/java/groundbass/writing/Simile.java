package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.InForce;

/** Whether a bar may be printed as a repeat sign (rule: simile-signs). */
final class Simile {
    private Simile() {}

    /** Written as the same as the bar just before it, still the same, and with no tie over either bar line. */
    static boolean of(Bar bar, InForce inForce, WrittenBar before) {
        boolean written = bar.copy()
                .filter(copy -> copy.isWhole() && copy.bar() == inForce.number() - 1)
                .isPresent();
        return written
                && sameWords(bar, before.bar())
                && sameSigns(inForce, before.inForce())
                && !isHeld(bar, before.bar());
    }

    private static boolean sameWords(Bar bar, Bar before) {
        return bar.notes().equals(before.notes())
                && bar.chords().equals(before.chords())
                && bar.directions().equals(before.directions())
                && bar.from().equals(before.from())
                && bar.to().equals(before.to());
    }

    private static boolean sameSigns(InForce now, InForce before) {
        return now.key().equals(before.key()) && now.meter().equals(before.meter());
    }

    /** The two bars have the same notes, so one look covers the tie into this bar and the one out of it. */
    private static boolean isHeld(Bar bar, Bar before) {
        return before.notes().stream().anyMatch(note -> note.end().isAfter(before.to()))
                || bar.notes().stream().anyMatch(note -> note.end().isAfter(bar.to()));
    }
}
