package groundbass.store;

import groundbass.identity.TextValue;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Type;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.argument.ArgumentFactory;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.generic.GenericTypes;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.jdbi.v3.core.mapper.ColumnMapperFactory;

/** Has jdbi bind and read every {@link TextValue} by its text: a record through its constructor, an enum by its constants. */
final class TextValueColumns implements ArgumentFactory.Preparable, ColumnMapperFactory {
    private final Map<Class<?>, TextColumn<?>> columns = new ConcurrentHashMap<>();

    @Override
    public Optional<Function<Object, Argument>> prepare(Type type, ConfigRegistry config) {
        return column(type).map(column -> column::argument);
    }

    @Override
    public Optional<ColumnMapper<?>> build(Type type, ConfigRegistry config) {
        return column(type).map(Function.identity());
    }

    private Optional<TextColumn<?>> column(Type type) {
        Class<?> raw = GenericTypes.getErasedType(type);
        return TextValue.class.isAssignableFrom(raw) && raw != TextValue.class
                ? Optional.of(columns.computeIfAbsent(raw, found -> column(found.asSubclass(TextValue.class))))
                : Optional.empty();
    }

    private static <T extends TextValue> TextColumn<T> column(Class<T> type) {
        return new TextColumn<>(type, TextValue::value, type.isEnum() ? constants(type) : constructor(type));
    }

    private static <T extends TextValue> Function<String, T> constants(Class<T> type) {
        Map<String, T> byText = Stream.of(type.getEnumConstants())
                .collect(Collectors.toUnmodifiableMap(TextValue::value, Function.identity()));
        return text -> Optional.ofNullable(byText.get(text))
                .orElseThrow(() -> new IllegalArgumentException("no " + type.getSimpleName() + ": " + text));
    }

    private static <T> Function<String, T> constructor(Class<T> type) {
        try {
            Constructor<T> constructor = type.getConstructor(String.class);
            return text -> make(constructor, text);
        } catch (NoSuchMethodException e) {
            throw new IllegalArgumentException(type + " cannot be made of one text", e);
        }
    }

    private static <T> T make(Constructor<T> constructor, String text) {
        try {
            return constructor.newInstance(text);
        } catch (InvocationTargetException e) {
            throw new IllegalArgumentException("the column holds no " + constructor.getDeclaringClass(), e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
