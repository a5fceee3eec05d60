package groundbass.groove;

import groundbass.performance.Performance;
import groundbass.performance.TimedBar;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.List;

/**
 * Which bar of which groove a band plays in one bar of a performance. A bar of another meter gets a groove of that meter;
 * a section begins the pattern anew.
 *
 * @param index in the pattern, from zero
 */
record PatternBar(TimedBar bar, Groove groove, int index) {
    /** @return all bars but a pickup */
    static List<PatternBar> of(Performance performance, Groove groove) {
        var bars = new ArrayList<PatternBar>();
        int next = 0;
        for (var bar : performance.bars()) {
            if (!bar.bar().isPickup()) {
                var meter = bar.inForce().meter();
                boolean fits = groove.meter().length().equals(meter.length());
                var playing = fits ? groove : GrooveLibrary.ofMeter(meter).withFeel(groove.feel());
                int index = beginsASection(bar) || !fits ? 0 : next % playing.bars();
                bars.add(new PatternBar(bar, playing, index));
                next = index + 1;
            }
        }
        return bars;
    }

    private static boolean beginsASection(TimedBar bar) {
        return bar.bar().changes().section().isPresent();
    }

    boolean beginsASection() {
        return beginsASection(bar);
    }

    /** When a column begins, counted from the bar's first count. */
    Fraction offset(int column) {
        return groove.column().times(column);
    }

    /** Whether a bar that is cut short still has this column. */
    boolean has(int column) {
        return offset(column).isBefore(bar.bar().to());
    }

    Stroke stroke(Piece piece, int column) {
        return groove.stroke(piece, index, column);
    }
}
