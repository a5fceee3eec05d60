package groundbass.linetext.problem;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that was probably meant: the one that the fewest changed letters lead to. */
public final class Nearest {
    /** Longer words are no slips of known ones, and are not worth the time. */
    private static final int LONGEST = 24;

    private Nearest() {}

    public static Optional<String> to(String typed, Collection<String> known) {
        if (typed.length() > LONGEST) {
            return Optional.empty();
        }
        String lower = typed.toLowerCase(Locale.ROOT);
        int most = typed.length() == 1 ? 0 : Math.max(1, typed.length() / 3);
        return known.stream()
                .filter(word -> distance(lower, word.toLowerCase(Locale.ROOT)) <= most)
                .min(Comparator.comparingInt((String word) -> distance(lower, word.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** Letters put in, left out, changed, or swapped with their neighbour (restricted Damerau-Levenshtein). */
    static int distance(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                cost[i][j] = i == 0 || j == 0 ? i + j : cheapest(cost, a, b, i, j);
            }
        }
        return cost[a.length()][b.length()];
    }

    private static int cheapest(int[][] cost, String a, String b, int i, int j) {
        boolean same = a.charAt(i - 1) == b.charAt(j - 1);
        int best = Math.min(cost[i - 1][j - 1] + (same ? 0 : 1), 1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(best, cost[i - 2][j - 2] + 1) : best;
    }
}
