package groundbass.store;

import groundbass.store.fault.UniqueViolation;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.generic.GenericType;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/** What a site keeps under a name, a row each: its settings, its keys, the identity of its folder. */
public final class NamedValues {
    private NamedValues() {}

    public static Map<String, String> all(Handle handle) {
        return handle.createQuery("select name, chosen from setting")
                .setMapKeyColumn("name")
                .setMapValueColumn("chosen")
                .collectInto(new GenericType<>() {});
    }

    public static Optional<String> find(Handle handle, String name) {
        return handle.createQuery("select chosen from setting where name = :name")
                .bind("name", name)
                .mapTo(String.class)
                .findOne();
    }

    public static void put(Handle handle, String name, String value) {
        int known = handle.createUpdate("update setting set chosen = :value where name = :name")
                .bind("name", name)
                .bind("value", value)
                .execute();
        if (known == 0) {
            insert(handle, name, value);
        }
    }

    /**
     * A value that is made once and never changes.
     *
     * @return what stands afterwards: another node may have been faster
     */
    public static String keep(Jdbi jdbi, String name, Supplier<String> fresh) {
        return jdbi.withHandle(handle -> find(handle, name)).orElseGet(() -> insert(jdbi, name, fresh.get()));
    }

    /** Deletes every value whose name begins so. @return how many there were */
    public static int forget(Handle handle, String beginning) {
        return handle.createUpdate("delete from setting where substring(name, 1, :length) = :beginning")
                .bind("length", beginning.length())
                .bind("beginning", beginning)
                .execute();
    }

    private static String insert(Jdbi jdbi, String name, String value) {
        try {
            jdbi.useHandle(handle -> insert(handle, name, value));
            return value;
        } catch (UnableToExecuteStatementException e) {
            if (!UniqueViolation.is(e)) throw e;
            return jdbi.withHandle(handle -> find(handle, name)).orElseThrow(() -> e); // another node was faster
        }
    }

    private static void insert(Handle handle, String name, String value) {
        handle.execute("insert into setting (name, chosen) values (?, ?)", name, value);
    }
}
