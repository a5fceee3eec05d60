package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A meter as the rules of writing see it: its beats, its strong points, and the grid below the beat. */
final class Pulse {
    /** The finest grid that is written without a tuplet. */
    static final Fraction FINEST = Fraction.of(1, 64);

    private final Meter meter;
    private final List<Fraction> beatStarts;
    private final boolean simple;
    private final Fraction unit;

    Pulse(Meter meter) {
        this.meter = meter;
        this.beatStarts = meter.beatStarts();
        this.simple = !meter.isGrouped() && Integer.bitCount(meter.beats().get(0)) == 1;
        this.unit = simple ? meter.pulse() : meter.count();
    }

    /** Whether all beats are alike and divide by two. */
    boolean isSimple() {
        return simple;
    }

    /** What off-beat rules are measured by: the beat in simple metres, the count in compound and grouped ones. */
    Fraction unit() {
        return unit;
    }

    int beatCount() {
        return beatStarts.size();
    }

    List<Fraction> beatStarts() {
        return beatStarts;
    }

    /** The index of the beat that {@code at} lies in. */
    int beatAt(Fraction at) {
        int beat = 0;
        while (beat + 1 < beatStarts.size() && !beatStarts.get(beat + 1).isAfter(at)) {
            beat++;
        }
        return beat;
    }

    Fraction beatStart(Fraction at) {
        return beatStarts.get(beatAt(at));
    }

    Fraction beatEnd(Fraction at) {
        int next = beatAt(at) + 1;
        return next < beatStarts.size() ? beatStarts.get(next) : meter.length();
    }

    boolean isBeat(Fraction at) {
        return beatStart(at).equals(at) || at.equals(meter.length());
    }

    /** The middle of a bar of four like beats, which must be seen (rule: show-middle-of-bar). */
    Optional<Fraction> middle() {
        boolean four = beatStarts.size() == 4 && !meter.isGrouped();
        return four ? Optional.of(meter.length().dividedBy(2)) : Optional.empty();
    }

    boolean hidesMiddle(Fraction from, Fraction to) {
        return middle().filter(at -> from.isBefore(at) && to.isAfter(at)).isPresent();
    }

    /** Beats and, below them, halves of a simple beat or counts of a compound one: where a tuplet may end. */
    List<Fraction> joints() {
        var step = simple ? unit.dividedBy(2) : unit;
        var joints = new ArrayList<Fraction>();
        for (var at = Fraction.ZERO; at.isBefore(meter.length()); at = at.plus(step)) {
            joints.add(at);
        }
        return joints;
    }

    /** How good a place is for a cut, 0 the best. */
    int weakness(Fraction at) {
        if (middle().filter(at::equals).isPresent()) {
            return 0;
        }
        if (isBeat(at)) {
            return 1;
        }
        int weakness = 2;
        for (var grid = unit; !at.isOnGrid(grid) && grid.isAfter(FINEST); grid = grid.dividedBy(2)) {
            weakness++;
        }
        return weakness;
    }

    /** The longest power of two, a whole note at most, that {@code at} is a multiple of; for times on the grid. */
    static Fraction grid(Fraction at) {
        if (at.isZero()) {
            return Fraction.ONE;
        }
        return Fraction.of(Long.lowestOneBit(at.numerator()), at.denominator()).min(Fraction.ONE);
    }

    /** Whether a rest may end here for no note's sake: nowhere that would ask for a tuplet. */
    boolean mayEndRest(Fraction at) {
        return simple ? isWritable(at) : at.isOnGrid(unit);
    }

    static boolean isWritable(Fraction at) {
        return at.isOnGrid(FINEST);
    }

    /** How many multiples of {@code step} lie between two times, neither included. */
    static long pointsBetween(Fraction from, Fraction to, Fraction step) {
        long last = to.dividedBy(step).floor() - (to.isOnGrid(step) ? 1 : 0);
        return last - from.dividedBy(step).floor();
    }
}
