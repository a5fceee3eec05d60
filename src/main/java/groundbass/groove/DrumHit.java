package groundbass.groove;

import groundbass.score.Fraction;
import java.util.Objects;

/** One stroke on the timeline of a performance. */
public record DrumHit(Piece piece, Stroke stroke, Fraction at, double seconds) {
    public DrumHit {
        Objects.requireNonNull(piece);
        Objects.requireNonNull(stroke);
        Objects.requireNonNull(at);
    }

    public int velocity() {
        return stroke.velocity();
    }
}
