package groundbass.checks.level;

import groundbass.checks.finding.Evidence;
import groundbass.score.Line;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * The level that a line's measured features suggest; the educator's own word counts. Weights and limits are common
 * practice, no source, set so that a line of plain quarters is for beginners.
 *
 * @param demands what makes it hard, the heaviest first; nothing that does not count
 */
public record LevelSuggestion(Difficulty level, List<Demand> demands) {
    private static final double INTERMEDIATE_FROM = 3;
    private static final double ADVANCED_FROM = 6;

    public LevelSuggestion {
        Objects.requireNonNull(level);
        demands = List.copyOf(demands);
    }

    public static LevelSuggestion of(Line line) {
        return of(new Evidence(line));
    }

    static LevelSuggestion of(Evidence evidence) {
        var demands = Demands.of(evidence).stream()
                .filter(demand -> demand.weight() > 0)
                .sorted(Comparator.comparingDouble(Demand::weight).reversed())
                .toList();
        return new LevelSuggestion(level(total(demands)), demands);
    }

    /** All weights together. */
    public double weight() {
        return total(demands);
    }

    private static double total(List<Demand> demands) {
        return demands.stream().mapToDouble(Demand::weight).sum();
    }

    private static Difficulty level(double weight) {
        if (weight >= ADVANCED_FROM) {
            return Difficulty.ADVANCED;
        }
        return weight >= INTERMEDIATE_FROM ? Difficulty.INTERMEDIATE : Difficulty.BEGINNER;
    }
}
