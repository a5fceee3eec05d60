package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Passes.Played;
import java.util.ArrayList;
import java.util.List;

/** Lays the bars out in the order in which they are played. */
final class Unfolding {
    private final Line line;
    private final List<InForce> inForce;
    private final List<TimedBar> bars = new ArrayList<>();

    private Unfolding(Line line) {
        this.line = line;
        this.inForce = line.inForce();
    }

    /** @param firstBar when the first whole bar starts; a pickup ends there */
    static List<TimedBar> of(Line line, int rounds, Fraction firstBar) {
        var first = line.bars().get(0);
        var timeline = new Unfolding(line);
        var now = first.isPickup() ? firstBar.minus(first.length()) : firstBar;
        for (int round = 1; round <= rounds; round++) {
            now = timeline.play(round, now);
        }
        return List.copyOf(timeline.bars);
    }

    private Fraction play(int round, Fraction from) {
        var now = from;
        for (var played : line.played()) {
            if (isHeard(played, round)) {
                var bar = new TimedBar(
                        line.bars().get(played.bar()), inForce.get(played.bar()), played.pass(), round, now);
                bars.add(bar);
                now = bar.end();
            }
        }
        return now;
    }

    /** A pickup comes again before a further round only where the last bar leaves room for it. */
    private boolean isHeard(Played played, int round) {
        var bar = line.bars().get(played.bar());
        return round == 1 || !bar.isPickup() || lastBarLeaves(bar.length());
    }

    private boolean lastBarLeaves(Fraction room) {
        int last = line.bars().size() - 1;
        var whole = inForce.get(last).meter().length();
        return !line.bars().get(last).length().plus(room).isAfter(whole);
    }
}
