package groundbass.catalog.educator;

import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** Who changed what, append-only. An entry is written in the transaction of the change, so neither is there alone. */
public final class Audit {
    private static final int LONGEST_DETAIL = 2000;

    private final Jdbi jdbi;
    private final Clock clock;

    public Audit(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    public void append(Handle handle, EducatorId who, String what, String detail) {
        append(handle, who.value(), what, detail);
    }

    /** @see AuditEntry for what the words mean */
    public void append(Handle handle, String who, String what, String detail) {
        handle.createUpdate("insert into audit (at, who, what, detail) values (:at, :who, :what, :detail)")
                .bind("at", clock.instant())
                .bind("who", who)
                .bind("what", what)
                .bind("detail", detail.substring(0, Math.min(detail.length(), LONGEST_DETAIL)))
                .execute();
    }

    /** The latest entries, newest first. */
    public List<AuditEntry> latest(int count) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select at, who, what, detail from audit order by id desc limit :count")
                        .bind("count", count)
                        .map(Audit::entry)
                        .list());
    }

    private static AuditEntry entry(ResultSet row, StatementContext context) throws SQLException {
        return new AuditEntry(
                Instants.from(row, "at"), row.getString("who"), row.getString("what"), row.getString("detail"));
    }
}
