package groundbass.engraving.sign;

import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A note that the fretting hand reaches from the one before it on its string.
 *
 * @param source where that one stands, if it is on this system
 */
record Reached(Optional<Spot> source, Optional<HeadPlace> from, Spot target, HeadPlace head, Arrival arrival) {
    /** In time. */
    static List<Reached> of(Sketch sketch) {
        var all = new ArrayList<Reached>();
        for (int i = 0; i < sketch.spots().size(); i++) {
            for (var head : sketch.spots().get(i).cell().heads()) {
                var arrival = head.head().note().arrival().filter(each -> !each.isGrace());
                if (Labels.isShown(head.head()) && arrival.isPresent()) {
                    all.add(of(sketch, i, head, arrival.get()));
                }
            }
        }
        return all;
    }

    private static Reached of(Sketch sketch, int index, HeadPlace head, Arrival arrival) {
        int string = head.head().note().string();
        var target = sketch.spots().get(index);
        for (int i = index - 1; i >= 0; i--) {
            var spot = sketch.spots().get(i);
            var from = on(spot, string);
            if (spot.x() < target.x() && from.isPresent()) {
                return new Reached(Optional.of(spot), from, target, head, arrival);
            }
        }
        return new Reached(Optional.empty(), Optional.empty(), target, head, arrival);
    }

    private static Optional<HeadPlace> on(Spot spot, int string) {
        return spot.cell().heads().stream()
                .filter(head -> head.head().note().string() == string)
                .findFirst();
    }

    /** Whether no new stroke sounds it, so that a slur leads to it. */
    boolean slurred() {
        return head.head().note().pluck().isEmpty();
    }

    int string() {
        return head.head().note().string();
    }

    /** Where the way to it begins; before the first note where that is on an earlier system. */
    double sourceMiddle() {
        return source.map(Spot::middle).orElse(Math.min(target.span().start() - 0.6, target.middle() - 2));
    }

    /** Whether both lead from one moment to one moment, so that one curve does for them. */
    boolean besides(Reached that) {
        return target.x() == that.target.x() && sourceMiddle() == that.sourceMiddle();
    }
}
