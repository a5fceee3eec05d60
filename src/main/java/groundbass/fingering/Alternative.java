package groundbass.fingering;

import java.util.List;
import java.util.Objects;

/**
 * Another way of playing a passage of a line.
 *
 * @param stops every note of the passage, moved or not
 * @param cost with the way there and the way on
 * @param saved how much cheaper it is than what is written; negative where it is dearer
 * @param underOneHand whether the hand stays in one position through the passage
 */
public record Alternative(List<Stop> stops, Cost cost, double saved, boolean underOneHand) {
    public Alternative {
        stops = List.copyOf(stops);
        Objects.requireNonNull(cost);
    }

    /** Where the hand stands first. */
    public int position() {
        return stops.isEmpty() ? 1 : stops.get(0).position();
    }
}
