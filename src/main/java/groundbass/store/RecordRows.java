package groundbass.store;

import java.lang.reflect.Type;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.generic.GenericTypes;
import org.jdbi.v3.core.mapper.ColumnMappers;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.RowMapperFactory;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;

/** Has jdbi read a row as any record, each component from the column of its name; a record that is a column stays one. */
final class RecordRows implements RowMapperFactory {
    private final Map<Class<?>, RowMapper<?>> mappers = new ConcurrentHashMap<>();

    @Override
    public Optional<RowMapper<?>> build(Type type, ConfigRegistry config) {
        Class<?> raw = GenericTypes.getErasedType(type);
        boolean isRow =
                raw.isRecord() && config.get(ColumnMappers.class).findFor(type).isEmpty();
        return isRow ? Optional.of(mappers.computeIfAbsent(raw, ConstructorMapper::of)) : Optional.empty();
    }
}
