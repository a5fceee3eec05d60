package groundbass.post;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/** Letters as rows, written in the transaction that causes them, so that neither is there without the other. */
public final class Outbox {
    /** How long a letter that has left is kept. */
    static final Duration KEPT = Duration.ofDays(30);

    /** All that makes an {@link OutboxMail}. */
    static final String SELECT = """
            select id, recipient, subject, body, html, send_after, useless_after, unsubscribe, created_at, attempts,
                delivery, last_error
            from outbox\s""";

    private static final Duration TOLD = Duration.ofDays(7);

    private final Jdbi jdbi;
    private final Clock clock;

    public Outbox(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Puts a letter in, as part of the transaction that the caller has open, if any. */
    public MessageId put(Mail message) {
        MessageId id = MessageId.next();
        jdbi.useHandle(handle -> handle.createUpdate("""
                        insert into outbox (id, recipient, subject, body, html, unsubscribe, created_at, send_after,
                            useless_after, attempts)
                        values (:id, :to, :subject, :text, :html, :unsubscribe, :now, :sendAfter, :uselessAfter, 0)""")
                .bind("id", id)
                .bind("now", clock.instant())
                .bindMethods(message)
                .execute());
        return id;
    }

    /** The newest letters first, whatever became of them. */
    public List<OutboxMail> newest(int most) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "order by created_at desc, id fetch first :most rows only")
                        .bind("most", most)
                        .mapTo(OutboxMail.class)
                        .list());
    }

    /** Every letter to an address that is kept, the newest first. */
    public List<OutboxMail> to(EmailAddress reader) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where recipient = :to order by created_at desc, id")
                        .bind("to", reader)
                        .mapTo(OutboxMail.class)
                        .list());
    }

    public Optional<OutboxMail> find(MessageId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(OutboxMail.class)
                .findOne());
    }

    /** How many letters have not left yet, nor been given up. */
    public int waiting() {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from outbox where delivery is null")
                .mapTo(Integer.class)
                .one());
    }

    /** How many letters of the last seven days were refused or given up: somebody has to look after them. */
    public int undelivered() {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select count(*) from outbox where delivery in (:refused, :failed) and created_at > :since""")
                .bind("refused", Delivery.REFUSED)
                .bind("failed", Delivery.FAILED)
                .bind("since", clock.instant().minus(TOLD))
                .mapTo(Integer.class)
                .one());
    }

    /**
     * How many letters to a list are under way: those to one person need not wait for many of them. What a mail server has put
     * off until later is in nobody's way.
     */
    public int listLettersUnderWay() {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select count(*) from outbox
                        where delivery is null and unsubscribe is not null and (attempts = 0 or send_after <= :now)""")
                .bind("now", clock.instant())
                .mapTo(Integer.class)
                .one());
    }

    /** What a mail server said when it refused an address for good, where no letter has reached it since. */
    public Optional<Refusal> refusal(EmailAddress reader) {
        return jdbi.withHandle(handle -> RefusedAddresses.find(handle, reader));
    }

    /** Forgets that an address was refused: nobody here has it any more. */
    public void forgetRefusal(EmailAddress reader) {
        jdbi.useHandle(handle -> RefusedAddresses.clear(handle, reader));
    }

    /** Takes every letter to an address out, because its reader has left. */
    public void forget(EmailAddress reader) {
        jdbi.useTransaction(handle -> {
            handle.createUpdate("delete from outbox where recipient = :to")
                    .bind("to", reader)
                    .execute();
            RefusedAddresses.clear(handle, reader);
        });
    }

    /**
     * Gives up every letter that still waits.
     *
     * @param why kept with each
     * @return how many there were
     */
    public int giveUpWaiting(String why) {
        return jdbi.withHandle(handle -> handle.createUpdate(
                        "update outbox set delivery = :failed, last_error = :why where delivery is null")
                .bind("failed", Delivery.FAILED)
                .bind("why", why)
                .execute());
    }

    /** Deletes letters that left, failed or became useless 30 days ago. */
    public int purge() {
        return jdbi.withHandle(
                handle -> handle.createUpdate("delete from outbox where delivery is not null and created_at < :before")
                        .bind("before", clock.instant().minus(KEPT))
                        .execute());
    }
}
