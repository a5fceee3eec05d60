package groundbass.linetext.assemble;

import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Technique;
import groundbass.theory.Key;

/**
 * One bar's place in time.
 *
 * @param from where a pickup begins, else zero
 * @param to where the bar ends, from its count 1
 * @param zero when count 1 is, or would be, from the start of the line as written
 * @param afterSeam whether something else than the bar before may be played before this one
 */
public record BarExtent(
        int number,
        Meter meter,
        Key key,
        Fraction from,
        Fraction to,
        Technique style,
        Fraction zero,
        boolean afterSeam) {
    public boolean contains(Fraction at) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    public Fraction absolute(Fraction at) {
        return zero.plus(at);
    }

    Fraction end() {
        return zero.plus(to);
    }

    /** The beat of {@code at}, as far as this bar has it. */
    Copy.Span beat(Fraction at) {
        return new Copy.Span(meter.beatStart(at).max(from), meter.beatEnd(at).min(to));
    }
}
