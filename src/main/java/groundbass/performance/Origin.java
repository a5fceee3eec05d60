package groundbass.performance;

import groundbass.score.Position;
import java.util.Objects;

/**
 * Where in the written line something stands, and which playing of it this is.
 *
 * @param pass through its repeated stretch, from 1
 * @param round through the whole line, from 1
 */
public record Origin(Position written, int pass, int round) {
    public Origin {
        Objects.requireNonNull(written);
    }
}
