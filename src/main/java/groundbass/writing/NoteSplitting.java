package groundbass.writing;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Cuts a sounding stretch of a bar into note shapes to be tied. The fewest shapes win; among equals, those cut at the
 * stronger places, and of these the longer first (rule: fewest-note-shapes).
 */
final class NoteSplitting {
    private static final int PER_SHAPE = 1000;
    private static final int UNREACHED = Integer.MAX_VALUE;

    private final Pulse pulse;

    NoteSplitting(Pulse pulse) {
        this.pulse = pulse;
    }

    /** Where the shapes begin and end: {@code from}, the cuts, {@code to}; all on the writable grid. */
    List<Fraction> cuts(Fraction from, Fraction to) {
        if (isAllowed(from, to)) {
            return List.of(from, to);
        }
        var points = points(from, to);
        int[] cost = new int[points.size()];
        int[] origin = new int[points.size()];
        Arrays.fill(cost, 1, cost.length, UNREACHED);
        for (int end = 1; end < points.size(); end++) {
            for (int start = 0; start < end; start++) {
                int through = cost[start] + PER_SHAPE + pulse.weakness(points.get(end));
                if (cost[start] != UNREACHED && through <= cost[end] && isAllowed(points.get(start), points.get(end))) {
                    cost[end] = through;
                    origin[end] = start;
                }
            }
        }
        return path(points, origin);
    }

    private List<Fraction> points(Fraction from, Fraction to) {
        var step = Pulse.grid(from).min(Pulse.grid(to)).min(Pulse.grid(pulse.unit()));
        var points = new ArrayList<Fraction>();
        points.add(from);
        for (var at = from.plus(step); at.isBefore(to); at = at.plus(step)) {
            points.add(at);
        }
        points.add(to);
        return points;
    }

    private static List<Fraction> path(List<Fraction> points, int[] origin) {
        var cuts = new ArrayList<Fraction>();
        for (int at = points.size() - 1; at > 0; at = origin[at]) {
            cuts.add(points.get(at));
        }
        cuts.add(points.get(0));
        Collections.reverse(cuts);
        return cuts;
    }

    private boolean isAllowed(Fraction from, Fraction to) {
        return NoteValue.lasting(to.minus(from)).isPresent()
                && keepsGrid(from, to)
                && keepsBeats(from, to)
                && showsMiddle(from, to)
                && !isSecondHalfOfThree(from, to);
    }

    /**
     * A note that begins or ends on an off-16th stays within its beat, where 16th-8th-16th is allowed; finer ones
     * likewise within their half or quarter of it (rule: show-next-beat). One that begins or ends on a half of the
     * beat crosses one beat at most.
     */
    private boolean keepsGrid(Fraction from, Fraction to) {
        var grid = Pulse.grid(from).min(Pulse.grid(to));
        if (!grid.isBefore(pulse.unit())) {
            return true;
        }
        return grid.times(2).equals(pulse.unit())
                ? Pulse.pointsBetween(from, to, pulse.unit()) <= 1
                : Pulse.pointsBetween(from, to, grid.times(4)) == 0;
    }

    /**
     * In compound and grouped metres a note leaves its beat only to fill whole beats (rule: compound-note-in-its-beat).
     */
    private boolean keepsBeats(Fraction from, Fraction to) {
        return pulse.isSimple() || !to.isAfter(pulse.beatEnd(from)) || (pulse.isBeat(from) && pulse.isBeat(to));
    }

    /**
     * The middle of the bar is hidden only by a note from the first beat, or by one of two beats from the second
     * (rule: show-middle-of-bar).
     */
    private boolean showsMiddle(Fraction from, Fraction to) {
        return !pulse.hidesMiddle(from, to) || from.isZero() || isMiddlePair(from, to);
    }

    /** What lasts from the middle of a bar of three beats to its end, a beat and a half (rule: three-is-not-six). */
    private boolean isSecondHalfOfThree(Fraction from, Fraction to) {
        var bar = pulse.unit().times(3);
        return pulse.isSimple() && pulse.beatCount() == 3 && to.equals(bar) && from.equals(bar.dividedBy(2));
    }

    private boolean isMiddlePair(Fraction from, Fraction to) {
        return pulse.isSimple()
                && from.equals(pulse.beatStarts().get(1))
                && to.equals(pulse.beatStarts().get(3));
    }
}
