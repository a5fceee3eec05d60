package groundbass.catalog.educator;

import groundbass.identity.Sha256;
import groundbass.store.NamedValues;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.mapper.Nested;

/** Educators and the set-up code as rows. */
final class EducatorRepository {
    /** An educator with the digest of the password. */
    record WithHash(@Nested Educator educator, String hash) {}

    private static final String SELECT = "select id, name, email, created_at, password_hash as hash from educator ";

    private final Jdbi jdbi;

    EducatorRepository(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    Optional<WithHash> find(EducatorId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(WithHash.class)
                .findOne());
    }

    Optional<WithHash> findByEmail(String email) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where email = :email")
                .bind("email", email)
                .mapTo(WithHash.class)
                .findOne());
    }

    List<WithHash> all() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "order by created_at, id")
                .mapTo(WithHash.class)
                .list());
    }

    /** The educator who was there first. */
    Optional<WithHash> first() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "order by created_at, id limit 1")
                .mapTo(WithHash.class)
                .findOne());
    }

    void insert(Handle handle, Educator educator, String hash) {
        handle.createUpdate("""
                        insert into educator (id, name, email, password_hash, created_at)
                        values (:id, :name, :email, :hash, :createdAt)""").bindMethods(educator).bind("hash", hash).execute();
    }

    /** Name and address; the password stays. */
    void update(Handle handle, Educator educator) {
        handle.createUpdate("update educator set name = :name, email = :email where id = :id")
                .bindMethods(educator)
                .execute();
    }

    void setHash(Handle handle, EducatorId id, String hash) {
        handle.createUpdate("update educator set password_hash = :hash where id = :id")
                .bind("id", id)
                .bind("hash", hash)
                .execute();
    }

    /** What the site is called; empty while nobody has named it. Settings stand above this room, so it is read as a row. */
    String siteName() {
        return jdbi.withHandle(handle -> NamedValues.find(handle, "site.name")).orElse("");
    }

    /** Makes this the only code that works. */
    void replaceSetupCode(Handle handle, Sha256 code, Instant now) {
        handle.execute("delete from setup_code");
        handle.createUpdate("insert into setup_code (only_row, code_hash, created_at) values (1, :code, :at)")
                .bind("code", code)
                .bind("at", now)
                .execute();
    }

    boolean isSetupCode(Sha256 code) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from setup_code where code_hash = :code")
                        .bind("code", code)
                        .mapTo(Integer.class)
                        .one())
                == 1;
    }

    /** Whether this call used the code up. */
    boolean useUpSetupCode(Handle handle, Sha256 code) {
        return handle.createUpdate("delete from setup_code where code_hash = :code")
                        .bind("code", code)
                        .execute()
                == 1;
    }
}
