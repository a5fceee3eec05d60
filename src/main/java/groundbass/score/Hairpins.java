package groundbass.score;

import groundbass.score.Direction.Hairpin;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How far the hairpins of a line reach as it is written (rule: hairpin-course). */
public final class Hairpins {
    private final List<Reach> reaches = new ArrayList<>();
    private Optional<Begun> open = Optional.empty();

    private Hairpins() {}

    /** A hairpin from one moment to another, with the indices of their bars; it may end where a bar does. */
    public record Reach(int bar, Hairpin hairpin, int lastBar, Fraction end) {}

    private record Begun(int bar, Hairpin hairpin, Fraction barEnd) {}

    /** In time. */
    public static List<Reach> of(List<Bar> bars) {
        var hairpins = new Hairpins();
        for (int i = 0; i < bars.size(); i++) {
            for (var direction : bars.get(i).directions()) {
                hairpins.meet(i, direction, bars.get(i).to());
            }
        }
        hairpins.open.ifPresent(begun -> hairpins.close(begun, begun.bar(), begun.barEnd()));
        return List.copyOf(hairpins.reaches);
    }

    private void meet(int bar, Direction direction, Fraction barEnd) {
        if (direction instanceof Direction.Words) {
            return;
        }
        open.ifPresent(begun -> close(begun, bar, direction.at()));
        open = direction instanceof Hairpin hairpin ? Optional.of(new Begun(bar, hairpin, barEnd)) : Optional.empty();
    }

    private void close(Begun begun, int lastBar, Fraction end) {
        reaches.add(new Reach(begun.bar(), begun.hairpin(), lastBar, end));
    }
}
