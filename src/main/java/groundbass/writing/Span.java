package groundbass.writing;

import groundbass.score.Fraction;
import java.util.List;

/**
 * A stretch of one voice in which nothing begins or ends.
 *
 * @param parts what sounds, lowest first; empty for silence
 * @param hidden whether the silence only fills a second voice
 */
record Span(Fraction from, Fraction to, List<Part> parts, boolean hidden) {
    boolean isSilent() {
        return parts.isEmpty();
    }

    Span between(Fraction newFrom, Fraction newTo) {
        return new Span(newFrom, newTo, parts, hidden);
    }

    /** Whether {@code next} says the same silence on. */
    boolean isContinuedBy(Span next) {
        return isSilent() && next.isSilent() && hidden == next.hidden;
    }
}
