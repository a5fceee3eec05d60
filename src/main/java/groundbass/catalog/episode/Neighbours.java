package groundbass.catalog.episode;

import java.util.Objects;
import java.util.Optional;

/** The published episodes before and after one in its series. */
public record Neighbours(Optional<Episode> earlier, Optional<Episode> later) {
    public Neighbours {
        Objects.requireNonNull(earlier);
        Objects.requireNonNull(later);
    }
}
