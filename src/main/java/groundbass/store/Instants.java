package groundbass.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Instants on their way into and out of a {@code timestamp with time zone}, the same on H2 and PostgreSQL. Bound with
 * their offset, because a bare SQL timestamp is read in the zone of the session and is ambiguous for one hour a year.
 */
public final class Instants {
    private Instants() {}

    /** What to bind; cut to the microseconds that both databases keep. */
    public static OffsetDateTime toColumn(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC);
    }

    /** The instant in a column that is never empty. */
    public static Instant from(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    /** The instant in a column that may be empty. */
    public static Optional<Instant> ifPresent(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
