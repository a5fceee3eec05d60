package groundbass.post;

import groundbass.store.Instants;
import java.net.URI;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** Letters as rows, written in the transaction that causes them, so that neither is there without the other. */
public final class Outbox {
    /** How long a letter that has left is kept. */
    static final Duration KEPT = Duration.ofDays(30);

    private static final Duration TOLD = Duration.ofDays(7);

    private final Jdbi jdbi;
    private final Clock clock;

    public Outbox(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Puts a letter into the caller's transaction. */
    public MessageId put(Handle handle, Mail message) {
        MessageId id = MessageId.next();
        handle.createUpdate("""
                        insert into outbox (id, recipient, subject, body, unsubscribe, created_at, send_after,
                            useless_after, attempts)
                        values (:id, :to, :subject, :body, :unsubscribe, :now, :after, :useless, 0)""")
                .bind("id", id.value())
                .bind("to", message.to().value())
                .bind("subject", message.subject())
                .bind("body", message.text())
                .bind("unsubscribe", message.unsubscribe().map(URI::toString).orElse(null))
                .bind("now", Instants.toColumn(clock.instant()))
                .bind("after", Instants.toColumn(message.sendAfter()))
                .bind("useless", message.uselessAfter().map(Instants::toColumn).orElse(null))
                .execute();
        return id;
    }

    public MessageId put(Mail message) {
        return jdbi.inTransaction(handle -> put(handle, message));
    }

    /** The newest letters first, whatever became of them. */
    public List<OutboxMail> newest(int most) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select * from outbox order by created_at desc, id fetch first :most rows only")
                .bind("most", most)
                .map(Outbox::letter)
                .list());
    }

    /** Every letter to an address that is kept, the newest first. */
    public List<OutboxMail> to(EmailAddress reader) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select * from outbox where recipient = :to order by created_at desc, id")
                        .bind("to", reader.value())
                        .map(Outbox::letter)
                        .list());
    }

    public Optional<OutboxMail> find(MessageId id) {
        return jdbi.withHandle(handle -> handle.createQuery("select * from outbox where id = :id")
                .bind("id", id.value())
                .map(Outbox::letter)
                .findOne());
    }

    /** How many letters of the last seven days were refused or given up: somebody has to look after them. */
    public int undelivered() {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select count(*) from outbox where delivery in (:refused, :failed) and created_at > :since""")
                .bind("refused", Delivery.REFUSED.column())
                .bind("failed", Delivery.FAILED.column())
                .bind("since", Instants.toColumn(clock.instant().minus(TOLD)))
                .mapTo(Integer.class)
                .one());
    }

    /** Takes every letter to an address out, because its reader has left. */
    public int forget(Handle handle, EmailAddress reader) {
        return handle.createUpdate("delete from outbox where recipient = :to")
                .bind("to", reader.value())
                .execute();
    }

    /** Deletes letters that left, failed or became useless 30 days ago. */
    public int purge() {
        return jdbi.withHandle(
                handle -> handle.createUpdate("delete from outbox where delivery is not null and created_at < :before")
                        .bind("before", Instants.toColumn(clock.instant().minus(KEPT)))
                        .execute());
    }

    static OutboxMail letter(ResultSet row, StatementContext context) throws SQLException {
        return new OutboxMail(
                new MessageId(row.getString("id")),
                message(row),
                Instants.from(row, "created_at"),
                row.getInt("attempts"),
                Optional.ofNullable(row.getString("delivery")).map(Delivery::of),
                Optional.ofNullable(row.getString("last_error")));
    }

    private static Mail message(ResultSet row) throws SQLException {
        return new Mail(
                new EmailAddress(row.getString("recipient")),
                row.getString("subject"),
                row.getString("body"),
                Instants.from(row, "send_after"),
                Instants.ifPresent(row, "useless_after"),
                Optional.ofNullable(row.getString("unsubscribe")).map(URI::create));
    }
}
