package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Fraction;
import groundbass.score.Position;

/**
 * What of a bar is told in one step, from one moment of it until before another.
 *
 * @param earlier whether it is told by an earlier bar
 */
public record Breath(Fraction from, Fraction to, boolean earlier) {
    boolean has(Tone tone) {
        return has(tone.at().position());
    }

    /** Whether a moment of its bar lies in it. */
    boolean has(Position position) {
        var at = position.at();
        return !at.isBefore(from) && at.isBefore(to);
    }
}
