package groundbass.script.thread.whole;

import groundbass.script.claims.Claim.Shift;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.Optional;

/** How far a bar is said to be moved against another: "one string higher", "two frets down", "an octave up". */
final class Shifts {
    private static final int OCTAVE = 12;

    private Shifts() {}

    /** {@link Shift#NONE} where none is said, or not which way. */
    static Shift of(Clause clause) {
        int way = clause.has(Tie.UP) == clause.has(Tie.DOWN) ? 0 : clause.has(Tie.UP) ? 1 : -1;
        return clause.units().stream()
                .map(Read::unit)
                .flatMap(unit -> shift(unit, way).stream())
                .findFirst()
                .filter(shift -> way != 0)
                .orElse(Shift.NONE);
    }

    private static Optional<Shift> shift(Constituent unit, int way) {
        if (unit instanceof Constituent.Move move) {
            return Optional.of(
                    move.strings() ? new Shift.Strings(way * move.many()) : new Shift.Frets(way * move.many()));
        }
        if (unit instanceof Constituent.Octaves octaves) {
            return Optional.of(new Shift.Semitones(way * OCTAVE * octaves.many()));
        }
        return unit instanceof Constituent.Interval interval
                        && interval.semitones().isPresent()
                ? Optional.of(new Shift.Semitones(way * interval.semitones().getAsInt()))
                : Optional.empty();
    }

    /** Whether a unit belongs to what says how far a bar is moved. */
    static boolean isPart(Clause clause, Read read) {
        boolean moved = !of(clause).equals(Shift.NONE);
        boolean way =
                read.is(Tie.UP) || read.is(Tie.DOWN) || read.is(Tie.ONLY) || read.is(Tie.HIGH) || read.is(Tie.LOW);
        return moved && (way || shift(read.unit(), 1).isPresent());
    }
}
