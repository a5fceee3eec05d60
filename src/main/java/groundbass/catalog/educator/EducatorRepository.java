package groundbass.catalog.educator;

import groundbass.identity.Sha256;
import groundbass.store.Instants;
import groundbass.store.NamedValues;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Educators and the set-up code as rows. */
public final class EducatorRepository {
    /** An educator with the digest of the password. */
    record WithHash(Educator educator, String hash) {}

    private static final String SELECT = "select id, name, email, password_hash, created_at from educator ";

    Optional<WithHash> find(Handle handle, EducatorId id) {
        return handle.createQuery(SELECT + "where id = :id")
                .bind("id", id.value())
                .map(EducatorRepository::educator)
                .findOne();
    }

    Optional<WithHash> findByEmail(Handle handle, String email) {
        return handle.createQuery(SELECT + "where email = :email")
                .bind("email", email)
                .map(EducatorRepository::educator)
                .findOne();
    }

    List<WithHash> all(Handle handle) {
        return handle.createQuery(SELECT + "order by created_at, id")
                .map(EducatorRepository::educator)
                .list();
    }

    /** The educator who was there first. */
    Optional<WithHash> first(Handle handle) {
        return handle.createQuery(SELECT + "order by created_at, id limit 1")
                .map(EducatorRepository::educator)
                .findOne();
    }

    public void insert(Handle handle, Educator educator, String hash) {
        handle.createUpdate("""
                        insert into educator (id, name, email, password_hash, created_at)
                        values (:id, :name, :email, :hash, :at)""")
                .bind("id", educator.id().value())
                .bind("name", educator.name())
                .bind("email", educator.email())
                .bind("hash", hash)
                .bind("at", educator.createdAt())
                .execute();
    }

    /** Name and address; the password stays. */
    void update(Handle handle, Educator educator) {
        handle.createUpdate("update educator set name = :name, email = :email where id = :id")
                .bind("id", educator.id().value())
                .bind("name", educator.name())
                .bind("email", educator.email())
                .execute();
    }

    void setHash(Handle handle, EducatorId id, String hash) {
        handle.createUpdate("update educator set password_hash = :hash where id = :id")
                .bind("id", id.value())
                .bind("hash", hash)
                .execute();
    }

    /** What the site is called; empty while nobody has named it. Settings stand above this room, so it is read as a row. */
    String siteName(Handle handle) {
        return NamedValues.find(handle, "site.name").orElse("");
    }

    /** Makes this the only code that works. */
    void replaceSetupCode(Handle handle, Sha256 code, Instant now) {
        handle.execute("delete from setup_code");
        handle.createUpdate("insert into setup_code (only_row, code_hash, created_at) values (1, :code, :at)")
                .bind("code", code.hex())
                .bind("at", now)
                .execute();
    }

    boolean isSetupCode(Handle handle, Sha256 code) {
        return handle.createQuery("select count(*) from setup_code where code_hash = :code")
                        .bind("code", code.hex())
                        .mapTo(Integer.class)
                        .one()
                == 1;
    }

    /** Whether this call used the code up. */
    boolean useUpSetupCode(Handle handle, Sha256 code) {
        return handle.createUpdate("delete from setup_code where code_hash = :code")
                        .bind("code", code.hex())
                        .execute()
                == 1;
    }

    private static WithHash educator(ResultSet row, StatementContext context) throws SQLException {
        var educator = new Educator(
                new EducatorId(row.getString("id")),
                row.getString("name"),
                row.getString("email"),
                Instants.from(row, "created_at"));
        return new WithHash(educator, row.getString("password_hash"));
    }
}
