package groundbass.checks.kin;

import groundbass.score.Note;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Compares figures of the same beats; bars that are written alike are compared once. */
final class Comparisons {
    private final List<Figure> figures;
    private final int[] kinds;
    private final Map<Integer, Optional<Likeness>> compared = new HashMap<>();

    /** @param figures in the order of their bars */
    Comparisons(List<Figure> figures) {
        this.figures = figures;
        Map<List<Note>, Integer> known = new HashMap<>();
        this.kinds = figures.stream()
                .mapToInt(figure -> known.computeIfAbsent(figure.notes(), notes -> known.size()))
                .toArray();
    }

    List<Figure> figures() {
        return figures;
    }

    /** How the second is like the first. */
    Optional<Likeness> of(int pattern, int judged) {
        return compared.computeIfAbsent(
                kinds[pattern] * figures.size() + kinds[judged],
                pair -> Comparing.of(figures.get(pattern), figures.get(judged)));
    }
}
