package groundbass.engraving.spacing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Distances that must be kept between points of a bar, whatever its springs say. */
final class Rods {
    private record Rod(int from, int to, double length) {}

    private final List<Rod> rods = new ArrayList<>();

    void keep(int from, int to, double length) {
        if (to > from) {
            rods.add(new Rod(from, to, length));
        }
    }

    /** The least gaps that satisfy every rod; what a long rod lacks is shared out by the springs it spans. */
    double[] least(double[] natural) {
        double[] least = new double[natural.length];
        rods.stream()
                .sorted(Comparator.comparingInt(rod -> rod.to() - rod.from()))
                .forEach(rod -> stretch(least, natural, rod));
        return least;
    }

    private static void stretch(double[] least, double[] natural, Rod rod) {
        double have = 0;
        double springs = 0;
        for (int i = rod.from(); i < rod.to(); i++) {
            have += least[i];
            springs += natural[i];
        }
        double lacking = rod.length() - have;
        for (int i = rod.from(); i < rod.to() && lacking > 0; i++) {
            double share = springs > 0 ? natural[i] / springs : 1.0 / (rod.to() - rod.from());
            least[i] += lacking * share;
        }
    }
}
