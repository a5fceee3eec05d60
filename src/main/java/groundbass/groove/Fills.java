package groundbass.groove;

import groundbass.groove.Drums.Written;
import groundbass.score.Fraction;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What a drummer adds where sections meet (common practice, no source): over the last beat before a section hands go from
 * the snare down the toms, and its first stroke falls on the crash. Feet go on as they did.
 */
final class Fills {
    private static final List<List<Piece>> WAYS = List.of(
            List.of(Piece.SNARE),
            List.of(Piece.SNARE, Piece.LOWTOM),
            List.of(Piece.SNARE, Piece.MIDTOM, Piece.LOWTOM),
            List.of(Piece.SNARE, Piece.HIGHTOM, Piece.MIDTOM, Piece.LOWTOM));

    private static final Set<Piece> FEET = EnumSet.of(Piece.KICK, Piece.PEDAL);
    private static final Set<Piece> GIVE_WAY_TO_THE_CRASH = EnumSet.of(Piece.HAT, Piece.OPEN, Piece.RIDE, Piece.CRASH);

    private Fills() {}

    static void into(List<Written> strokes, List<PatternBar> bars) {
        for (int i = 1; i < bars.size(); i++) {
            if (bars.get(i).beginsASection()) {
                fill(strokes, bars.get(i - 1));
                crash(strokes, bars.get(i).bar().start());
            }
        }
    }

    private static void crash(List<Written> strokes, Fraction at) {
        strokes.removeIf(stroke -> stroke.at().equals(at) && GIVE_WAY_TO_THE_CRASH.contains(stroke.piece()));
        strokes.add(new Written(Piece.CRASH, Stroke.NORMAL, at, DrummersTouch.NONE));
    }

    /** A bar that is cut short has no room for it. */
    private static void fill(List<Written> strokes, PatternBar played) {
        var bar = played.bar();
        var meter = bar.inForce().meter();
        if (!bar.bar().length().equals(meter.length())) {
            return;
        }
        var starts = meter.beatStarts();
        var from = bar.moment(starts.get(starts.size() - 1));
        var beat = bar.end().minus(from);
        var way = WAYS.get(strokes(beat, played.groove().column()) - 1);
        strokes.removeIf(stroke ->
                !stroke.at().isBefore(from) && stroke.at().isBefore(bar.end()) && !FEET.contains(stroke.piece()));
        for (int i = 0; i < way.size(); i++) {
            var at = from.plus(beat.times(i).dividedBy(way.size()));
            strokes.add(new Written(way.get(i), Stroke.NORMAL, at, DrummersTouch.NONE));
        }
    }

    /** How many: as finely as the groove divides the beat, or as nearly as hands go. */
    private static int strokes(Fraction beat, Fraction column) {
        if (!beat.isOnGrid(column)) {
            return 1;
        }
        int columns = (int) beat.dividedBy(column).floor();
        return columns <= WAYS.size() ? columns : columns % 3 == 0 ? 3 : columns % 2 == 0 ? 4 : 1;
    }
}
