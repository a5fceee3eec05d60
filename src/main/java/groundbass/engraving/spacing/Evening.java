package groundbass.engraving.spacing;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Makes equal notes of a system stand about equally wide, and longer ones wider: what one note needs for a sign or a
 * letter, its equals get too, as far as there is room (rule: spacing-even).
 */
final class Evening {
    /** The most that the widest of equal gaps may exceed the narrowest, the first that there is room for. */
    private static final double[] RATIOS = {1.2, 1.35, 1.6, 2};

    private static final double LONGER = 1.05;

    private Evening() {}

    static List<MeasuredBar> of(List<MeasuredBar> bars, double room) {
        var widest = widest(bars);
        for (double ratio : RATIOS) {
            var least = least(widest, ratio);
            var even = bars.stream().map(bar -> raised(bar, least)).toList();
            if (even.stream().mapToDouble(MeasuredBar::leastWidth).sum() <= room) {
                return even;
            }
        }
        return bars;
    }

    /** The widest gap that some note of each duration must have. */
    private static Map<Fraction, Double> widest(List<MeasuredBar> bars) {
        var widest = new TreeMap<Fraction, Double>();
        for (var bar : bars) {
            for (int i = 1; i < bar.least().length; i++) {
                widest.merge(bar.duration(i), bar.least()[i], Math::max);
            }
        }
        return widest;
    }

    /** What each duration gets at least: its share of its own widest, and more than any shorter one. */
    private static Map<Fraction, Double> least(Map<Fraction, Double> widest, double ratio) {
        var least = new HashMap<Fraction, Double>();
        double shorter = 0;
        for (var each : widest.entrySet()) {
            double share = Math.max(each.getValue() / ratio, shorter * LONGER);
            least.put(each.getKey(), share);
            shorter = Math.max(share, each.getValue() / ratio);
        }
        return least;
    }

    private static MeasuredBar raised(MeasuredBar bar, Map<Fraction, Double> least) {
        var raised = new ArrayList<Double>();
        for (int i = 0; i < bar.least().length; i++) {
            double own = bar.least()[i];
            raised.add(i == 0 ? own : Math.max(own, least.get(bar.duration(i))));
        }
        return bar.withLeast(raised.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
