package groundbass.fingering;

import java.util.List;

/**
 * One way of playing a passage.
 *
 * @param grips one for each moment
 * @param costs what each grip costs with the way to it
 */
public record Way(List<Grip> grips, List<Cost> costs) {
    public Way {
        grips = List.copyOf(grips);
        costs = List.copyOf(costs);
        if (grips.size() != costs.size()) {
            throw new IllegalArgumentException("each grip has its cost: " + grips.size() + ", " + costs.size());
        }
    }

    public Cost cost() {
        return Cost.sum(costs);
    }

    /** Whether the hand stays in one position. */
    public boolean isUnderOneHand() {
        return grips.stream().mapToInt(Grip::position).distinct().count() <= 1;
    }
}
