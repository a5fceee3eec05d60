package groundbass.linetext.problem;

import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What to say where a chord is not known. */
final class ChordWords {
    private static final List<String> SUFFIXES = Arrays.stream(Quality.values())
            .map(Quality::suffix)
            .filter(suffix -> !suffix.isEmpty())
            .toList();

    private ChordWords() {}

    /** All qualities as they are typed. */
    static String known() {
        return String.join(" ", SUFFIXES);
    }

    /** The same root with the nearest quality. */
    static Optional<String> near(String text) {
        int root = text.length() > 1 && "#b".indexOf(text.charAt(1)) >= 0 ? 2 : 1;
        if (text.length() <= root || NoteName.parse(text.substring(0, root)).isEmpty()) {
            return Optional.empty();
        }
        return Nearest.to(text.substring(root), SUFFIXES).map(suffix -> text.substring(0, root) + suffix);
    }
}
