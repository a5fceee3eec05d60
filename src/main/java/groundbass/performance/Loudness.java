package groundbass.performance;

import groundbass.score.Direction;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import java.util.List;
import java.util.TreeMap;

/**
 * Which dynamic holds when: the one that was played last, so that a repeat goes on as loud as the bar before it ended. mf
 * before the first, and again where the whole line begins anew.
 */
final class Loudness {
    private final TreeMap<Fraction, Dynamic> changes = new TreeMap<>();

    Loudness(List<TimedBar> bars) {
        int round = 0;
        for (var bar : bars) {
            if (bar.round() > round) {
                changes.put(bar.start(), Dynamic.MF);
                round = bar.round();
            }
            for (var direction : bar.bar().directions()) {
                if (direction instanceof Direction.Loudness loudness) {
                    changes.put(bar.moment(loudness.at()), loudness.dynamic());
                }
            }
        }
    }

    /** @param moment as written, before swing */
    Dynamic at(Fraction moment) {
        var change = changes.floorEntry(moment);
        return change == null ? Dynamic.MF : change.getValue();
    }
}
