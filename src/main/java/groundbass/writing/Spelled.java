package groundbass.writing;

import groundbass.theory.Pitch;
import java.util.Objects;
import java.util.Optional;

/**
 * How a note is named.
 *
 * @param pitch of a dead note, that of its open string
 * @param grace the grace note that leads to it
 */
public record Spelled(Pitch pitch, Optional<Pitch> grace) {
    public Spelled {
        Objects.requireNonNull(pitch);
        Objects.requireNonNull(grace);
    }
}
