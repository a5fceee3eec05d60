package groundbass.store;

import java.lang.reflect.Type;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.argument.ArgumentFactory;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.generic.GenericTypes;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.jdbi.v3.core.statement.StatementContext;

/** How jdbi binds the values of one type to a column of text, and reads them from it; nothing stays nothing. */
public record TextColumn<T>(Class<T> type, Function<T, String> write, Function<String, T> read)
        implements ArgumentFactory.Preparable, ColumnMapper<T> {
    /** Tells {@code jdbi} how a type is kept; subtypes are kept alike. */
    public static <T> void register(Jdbi jdbi, Class<T> type, Function<T, String> write, Function<String, T> read) {
        var column = new TextColumn<>(type, write, read);
        jdbi.registerArgument(column).registerColumnMapper(type, column);
    }

    @Override
    public Optional<Function<Object, Argument>> prepare(Type wanted, ConfigRegistry config) {
        return type.isAssignableFrom(GenericTypes.getErasedType(wanted))
                ? Optional.of(this::argument)
                : Optional.empty();
    }

    Argument argument(Object value) {
        String text = value == null ? null : write.apply(type.cast(value));
        return (position, statement, context) -> statement.setString(position, text);
    }

    @Override
    public T map(ResultSet row, int column, StatementContext context) throws SQLException {
        String text = row.getString(column);
        return text == null ? null : read.apply(text);
    }
}
