package groundbass.musicxml;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What is said at moments of a line rather than at one note, gathered bar by bar. Mutable; one for a line. */
final class DirectionsByBar {
    private final List<List<Placed>> bars = new ArrayList<>();

    /** An element that may stand at some distance from where it is written. */
    @FunctionalInterface
    interface Movable {
        /** @param offset the {@code offset} element that it takes, or nothing */
        Node at(List<Node> offset);
    }

    /** At a time of its bar; at the bar's end it stands after the last note. */
    record Placed(Fraction at, Movable node) {}

    DirectionsByBar(int count) {
        for (int i = 0; i < count; i++) {
            bars.add(new ArrayList<>());
        }
    }

    void add(int bar, Fraction at, Movable node) {
        bars.get(bar).add(new Placed(at, node));
    }

    /** In time; what is said at one moment stays in the order in which it was added. */
    List<Placed> of(int bar) {
        return bars.get(bar).stream().sorted(Comparator.comparing(Placed::at)).toList();
    }
}
