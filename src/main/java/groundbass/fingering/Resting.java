package groundbass.fingering;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Thins out the grips that stop no string: of all positions only those of the stopped notes before and after. */
final class Resting {
    private final List<List<Hold>> layers;
    private final List<BitSet> before = new ArrayList<>();

    Resting(List<List<Hold>> layers) {
        this.layers = layers;
    }

    List<List<Hold>> all() {
        var now = new BitSet();
        for (var layer : layers) {
            before.add(now);
            now = stopped(layer, now);
        }
        var thinned = new ArrayList<>(layers);
        var after = new BitSet();
        for (int i = layers.size() - 1; i >= 0; i--) {
            thinned.set(i, thinned(layers.get(i), before.get(i), after));
            after = stopped(layers.get(i), after);
        }
        return thinned;
    }

    /** The positions of a layer's stopped notes, with those from further away where it may stop none. */
    private static BitSet stopped(List<Hold> layer, BitSet further) {
        var positions = new BitSet();
        boolean free = false;
        for (var hold : layer) {
            free |= hold.free;
            if (!hold.free) {
                positions.set(hold.position);
            }
        }
        if (free) {
            positions.or(further);
        }
        return positions;
    }

    private static List<Hold> thinned(List<Hold> layer, BitSet before, BitSet after) {
        boolean anywhere = before.isEmpty() && after.isEmpty();
        int first = layer.isEmpty() ? 0 : layer.get(0).position;
        var kept = new ArrayList<Hold>();
        for (var hold : layer) {
            boolean wanted = before.get(hold.position) || after.get(hold.position);
            if (!hold.free || wanted || (anywhere && hold.position == first)) {
                kept.add(hold);
            }
        }
        return kept.isEmpty() ? layer : kept;
    }
}
