package groundbass.store;

import java.sql.Types;
import java.time.Instant;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;

/** Makes jdbi bind a bare {@link Instant} as {@link Instants} does, so that nobody can forget to. */
final class InstantBinding extends AbstractArgumentFactory<Instant> {
    InstantBinding() {
        super(Types.TIMESTAMP_WITH_TIMEZONE);
    }

    @Override
    protected Argument build(Instant value, ConfigRegistry config) {
        var column = Instants.toColumn(value);
        return (position, statement, context) -> statement.setObject(position, column);
    }
}
