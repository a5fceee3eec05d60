package groundbass.writing;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.List;

/** Cuts silence into rests that show the beat (rule: rests-show-beats). */
final class RestSplitting {
    private static final Fraction DOTTED_EIGHTH =
            NoteValue.dotted(NoteValue.Base.EIGHTH).length();

    private final Pulse pulse;

    RestSplitting(Pulse pulse) {
        this.pulse = pulse;
    }

    /** Where the rests begin and end: {@code from}, the cuts, {@code to}; all on the writable grid. */
    List<Fraction> cuts(Fraction from, Fraction to) {
        var cuts = new ArrayList<Fraction>();
        cuts.add(from);
        for (var at = from; at.isBefore(to); ) {
            at = at.plus(longest(at, to));
            cuts.add(at);
        }
        return cuts;
    }

    private Fraction longest(Fraction at, Fraction to) {
        return NoteValue.CHOICE.stream()
                .filter(value -> !at.plus(value.length()).isAfter(to) && isAllowed(at, value))
                .map(NoteValue::length)
                .findFirst()
                .orElse(to.minus(at));
    }

    private boolean isAllowed(Fraction at, NoteValue value) {
        return pulse.isSimple() ? isAllowedInSimple(at, value) : isAllowedInBeats(at, value);
    }

    /**
     * Half a bar of four beats at a time, else a beat, else a part that stands on its own grid; dotted only as a dotted
     * eighth that is three quarters of a beat (rule: rests-show-beats, rests-in-three, no-dotted-rests).
     */
    private boolean isAllowedInSimple(Fraction at, NoteValue value) {
        var length = value.length();
        if (value.dots() > 0) {
            return length.equals(DOTTED_EIGHTH)
                    && length.dividedBy(3).times(4).equals(pulse.unit())
                    && !at.plus(length).isAfter(pulse.beatEnd(at));
        }
        boolean halfBar =
                pulse.middle().isPresent() && length.equals(pulse.unit().times(2));
        return at.isOnGrid(length) && (halfBar || !length.isAfter(pulse.unit()));
    }

    /**
     * A whole beat; the first two counts of one, never the last two of three; else within a count on its own grid
     * (rule: rests-compound).
     */
    private boolean isAllowedInBeats(Fraction at, NoteValue value) {
        var length = value.length();
        var start = pulse.beatStart(at);
        var end = at.plus(length);
        if (end.isAfter(pulse.beatEnd(at))) {
            return false;
        }
        if (at.equals(start) && end.equals(pulse.beatEnd(at))) {
            return true;
        }
        boolean pair = length.equals(pulse.unit().times(2)) && at.minus(start).isOnGrid(length);
        return value.dots() == 0 && (pair || (!length.isAfter(pulse.unit()) && at.isOnGrid(length)));
    }
}
