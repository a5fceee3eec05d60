package groundbass.linetext.problem;

import java.util.Optional;

/** Note names as German-speaking players say them, where line text writes the English ones. */
final class GermanNames {
    private GermanNames() {}

    /** {@code Bm7} for {@code Hm7}: the German H is the English B (common practice, no source). */
    static Optional<String> asWritten(String found) {
        return found.startsWith("H") ? Optional.of("B" + found.substring(1)) : Optional.empty();
    }
}
