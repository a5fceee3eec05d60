package groundbass.post;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Addresses that were refused for good when a letter was handed over, until one is taken again. */
final class RefusedAddresses {
    private RefusedAddresses() {}

    static void note(Handle handle, EmailAddress reader, String reply, Instant now) {
        clear(handle, reader);
        handle.createUpdate("insert into refused_address (email, refused_at, reply) values (:email, :now, :reply)")
                .bind("email", reader)
                .bind("now", now)
                .bind("reply", reply)
                .execute();
    }

    static void clear(Handle handle, EmailAddress reader) {
        handle.createUpdate("delete from refused_address where email = :email")
                .bind("email", reader)
                .execute();
    }

    static Optional<Refusal> find(Handle handle, EmailAddress reader) {
        return handle.createQuery("select refused_at, reply from refused_address where email = :email")
                .bind("email", reader)
                .mapTo(Refusal.class)
                .findOne();
    }
}
