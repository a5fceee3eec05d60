package groundbass.store;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/** How an instant is bound, for what {@link InstantColumn} does by itself and for statements without jdbi. */
public final class Instants {
    private Instants() {}

    /** What to bind; cut to the microseconds that both databases keep. */
    public static OffsetDateTime toColumn(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC);
    }
}
