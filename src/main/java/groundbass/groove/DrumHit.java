package groundbass.groove;

import groundbass.score.Fraction;
import java.util.Objects;

/**
 * One stroke on the timeline of a performance.
 *
 * @param at its moment as written
 * @param seconds when it is heard
 * @param force by what its loudness is multiplied, 1 as written
 */
public record DrumHit(Piece piece, Stroke stroke, Fraction at, double seconds, double force) {
    public DrumHit {
        Objects.requireNonNull(piece);
        Objects.requireNonNull(stroke);
        Objects.requireNonNull(at);
    }

    public int velocity() {
        return stroke.velocity();
    }
}
