package groundbass.fingering;

import java.util.List;

/**
 * One way of playing a passage.
 *
 * @param grips one for each moment
 */
public record Way(List<Grip> grips, Cost cost) {
    public Way {
        grips = List.copyOf(grips);
    }

    /** Whether the hand stays in one position. */
    public boolean isUnderOneHand() {
        return grips.stream().mapToInt(Grip::position).distinct().count() <= 1;
    }
}
