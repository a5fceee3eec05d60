package groundbass.midi;

import groundbass.performance.Performance;
import groundbass.score.Fraction;

/** With what a file begins. */
public enum Opening {
    /** With the clicks of the count-in. */
    COUNT_IN {
        @Override
        Fraction leftOut(Performance performance) {
            return Fraction.ZERO;
        }
    },
    /**
     * With the first bar, so that a program numbers the bars as the sheet does. What sounds before it, a pickup or grace
     * notes, needs a bar of its own, which no program numbers as the sheet does: bar 1 is then the second.
     */
    FIRST_BAR {
        @Override
        Fraction leftOut(Performance performance) {
            var bar = performance.countIn().meter().length();
            var first = performance.notes().stream()
                    .map(note -> note.when().at())
                    .reduce(performance.start(), Fraction::min);
            var upTo = first.min(performance.bars().get(0).start());
            return bar.times(upTo.dividedBy(bar).floor());
        }
    };

    /** How much of a performance goes before the file starts: whole bars in which only the count-in sounds. */
    abstract Fraction leftOut(Performance performance);
}
