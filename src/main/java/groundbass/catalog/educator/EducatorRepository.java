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

    private static final String COLUMNS = "e.id, e.name, e.email, e.created_at";
    private static final String SELECT = "select " + COLUMNS + ", e.password_hash as hash from educator e ";
    private static final String STANDING = """
            case when exists (select 1 from site_owner o where o.educator_id = e.id) then 'OWNER'
                 when e.may_begin then 'TEACHER' else 'GUEST' end as standing""";
    private static final String OPEN = "e.ended_at is null ";

    private final Jdbi jdbi;

    EducatorRepository(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    Optional<WithHash> find(EducatorId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where e.id = :id")
                .bind("id", id)
                .mapTo(WithHash.class)
                .findOne());
    }

    /** Whose desk is open. */
    Optional<WithHash> findByEmail(String email) {
        return byEmail(email, "and " + OPEN);
    }

    /** Whose desk is open, and who has not typed the address themselves. */
    Optional<WithHash> findByProvedEmail(String email) {
        return byEmail(email, "and " + OPEN + "and not e.email_typed");
    }

    /** Also whose desk is closed. */
    Optional<WithHash> findEverByEmail(String email) {
        return byEmail(email, "");
    }

    private Optional<WithHash> byEmail(String email, String more) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where e.email = :email " + more)
                .bind("email", email)
                .mapTo(WithHash.class)
                .findOne());
    }

    List<WithHash> all() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where " + OPEN + "order by e.created_at, e.id")
                .mapTo(WithHash.class)
                .list());
    }

    List<Member> members() {
        return jdbi.withHandle(handle -> handle.createQuery("select " + COLUMNS + ", " + STANDING + """
                        , exists (select 1 from second_factor f where f.educator_id = e.id) as has_factor,
                        (select max(a.at) from audit a where a.who = e.id and a.what = 'sign-in.done') as last_sign_in
                        from educator e where e.ended_at is null order by e.created_at, e.id""")
                .mapTo(Member.class)
                .list());
    }

    /** Until the transaction ends, nobody else opens or closes these desks. */
    void lock(Handle handle, List<EducatorId> ids) {
        // one after the other and always in this order, so that two who lock the same ones do not wait for each other
        ids.stream().map(EducatorId::value).sorted().forEach(id -> handle.createQuery(
                        "select id from educator where id = :id for update")
                .bind("id", id)
                .mapTo(String.class)
                .findOne());
    }

    /** Of those whose desk is open. */
    Optional<SiteStanding> standing(EducatorId id) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select " + STANDING + " from educator e where e.id = :id and " + OPEN)
                        .bind("id", id)
                        .mapTo(SiteStanding.class)
                        .findOne());
    }

    Optional<WithHash> owner() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "join site_owner o on o.educator_id = e.id")
                .mapTo(WithHash.class)
                .findOne());
    }

    /** Whoever was it before is it no more. */
    void setOwner(Handle handle, EducatorId id) {
        handle.execute("delete from site_owner");
        handle.createUpdate("insert into site_owner (only_row, educator_id) values (1, :id)")
                .bind("id", id)
                .execute();
    }

    void allowBeginning(Handle handle, EducatorId id) {
        handle.createUpdate("update educator set may_begin = true where id = :id")
                .bind("id", id)
                .execute();
    }

    /** @return whether it was open */
    boolean close(Handle handle, EducatorId id, Instant now) {
        return handle.createUpdate("update educator set ended_at = :now where id = :id and ended_at is null")
                        .bind("now", now)
                        .bind("id", id)
                        .execute()
                == 1;
    }

    /**
     * Opens a desk anew that was closed, for a person with the link of an invitation to its address. The name stays, which
     * stands beside what was written.
     *
     * @return whether it was closed
     */
    boolean reopen(Handle handle, EducatorId id, String hash) {
        return handle.createUpdate("""
                        update educator set password_hash = :hash, may_begin = true, email_typed = false, ended_at = null
                        where id = :id and ended_at is not null""").bind("id", id).bind("hash", hash).execute() == 1;
    }

    void insert(Handle handle, Educator educator, String hash, boolean mayBegin) {
        handle.createUpdate("""
                        insert into educator (id, name, email, password_hash, created_at, may_begin)
                        values (:id, :name, :email, :hash, :createdAt, :mayBegin)""")
                .bindMethods(educator)
                .bind("hash", hash)
                .bind("mayBegin", mayBegin)
                .execute();
    }

    /** Name and address as somebody typed them; the password stays. */
    void update(Handle handle, Educator educator) {
        handle.createUpdate("""
                        update educator set name = :name, email_typed = (email_typed or email <> :email), email = :email
                        where id = :id""").bindMethods(educator).execute();
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
