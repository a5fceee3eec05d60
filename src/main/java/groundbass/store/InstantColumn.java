package groundbass.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * How jdbi binds an instant to a {@code timestamp with time zone} and reads it, the same on H2 and PostgreSQL. With its
 * offset, because a bare SQL timestamp is read in the zone of the session and is ambiguous for one hour a year.
 */
final class InstantColumn extends AbstractArgumentFactory<Instant> implements ColumnMapper<Instant> {
    InstantColumn() {
        super(Types.TIMESTAMP_WITH_TIMEZONE);
    }

    @Override
    protected Argument build(Instant value, ConfigRegistry config) {
        var column = Instants.toColumn(value);
        return (position, statement, context) -> statement.setObject(position, column);
    }

    @Override
    public Instant map(ResultSet row, int column, StatementContext context) throws SQLException {
        var read = row.getObject(column, OffsetDateTime.class);
        return read == null ? null : read.toInstant();
    }
}
