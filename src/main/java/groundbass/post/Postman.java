package groundbass.post;

import groundbass.store.fault.UniqueViolation;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.Semaphore;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.statement.Update;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Empties the outbox, one idempotent pass at a time. A letter is claimed before it is sent, by moving its next attempt
 * into the future; a second postman finds it claimed, and if this one dies the letter is tried again later. A letter may
 * therefore be sent twice (same Message-ID), but is never lost. Letters to one person go before letters to a list. They go
 * out side by side, and a pass waits for none of them: a mail server that answers slowly delays its own letter alone.
 */
public final class Postman {
    /** After so many attempts a letter is given up: about six hours with the pauses below. */
    public static final int MOST_ATTEMPTS = 6;

    private static final Logger log = LoggerFactory.getLogger(Postman.class);
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final int PAUSE_GROWS_BY = 4;
    private static final int AT_ONCE = 16;
    private static final int LONGEST_ERROR = 500;

    private final Jdbi jdbi;
    private final Sender sender;
    private final Clock clock;
    private final Executor ways;
    private final Semaphore free = new Semaphore(AT_ONCE);

    /** @param ways what runs each letter's way, so that one does not wait for another */
    public Postman(Jdbi jdbi, Sender sender, Clock clock, Executor ways) {
        this.jdbi = jdbi;
        this.sender = sender;
        this.clock = clock;
        this.ways = ways;
    }

    /** Takes up the letters that are due, at most sixteen at a time with those still on their way. Returns how many. */
    public int deliverDue() {
        dropUseless();
        int begun = 0;
        for (OutboxMail letter : due()) {
            if (!free.tryAcquire()) break;
            if (begin(letter)) begun++;
        }
        return begun;
    }

    /** Uses up one free way, which the letter gives back at its end. */
    private boolean begin(OutboxMail letter) {
        boolean begun = false;
        try {
            if (claim(letter)) {
                ways.execute(() -> go(letter));
                begun = true;
            }
        } finally {
            if (!begun) free.release();
        }
        return begun;
    }

    private void go(OutboxMail letter) {
        try {
            deliver(letter);
        } finally {
            free.release();
        }
    }

    /** The pause after the given attempt, counted from 1: 1, 4, 16, 64, 256 minutes. */
    static Duration pauseAfter(int attempt) {
        return FIRST_PAUSE.multipliedBy((long) Math.pow(PAUSE_GROWS_BY, attempt - 1));
    }

    private void dropUseless() {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        update outbox set delivery = :useless, delivered_at = :now, body = '', html = null
                        where delivery is null and useless_after <= :now""")
                .bind("useless", Delivery.USELESS)
                .bind("now", clock.instant())
                .execute());
    }

    private List<OutboxMail> due() {
        return jdbi.withHandle(handle -> handle.createQuery(Outbox.SELECT + """
                        where delivery is null and send_after <= :now
                        order by case when unsubscribe is null then 0 else 1 end, send_after, id
                        fetch first :most rows only""")
                .bind("now", clock.instant())
                .bind("most", AT_ONCE)
                .mapTo(OutboxMail.class)
                .list());
    }

    private boolean claim(OutboxMail letter) {
        int attempt = letter.attempts() + 1;
        int claimed = jdbi.withHandle(handle -> handle.createUpdate("""
                        update outbox set attempts = :attempt, send_after = :next
                        where id = :id and attempts = :seen and delivery is null""")
                .bind("attempt", attempt)
                .bind("next", clock.instant().plus(pauseAfter(attempt)))
                .bind("id", letter.id())
                .bind("seen", letter.attempts())
                .execute());
        return claimed == 1;
    }

    private void deliver(OutboxMail letter) {
        if (handOver(letter)) reached(letter.message().to());
    }

    /** Whether it was taken; what becomes of it is noted either way. */
    private boolean handOver(OutboxMail letter) {
        try {
            close(letter, sender.send(letter.id(), letter.message()), Optional.empty());
            return true;
        } catch (SendingFailed failure) {
            failed(letter, failure);
        } catch (RuntimeException unforeseen) {
            failed(letter, new SendingFailed(unforeseen)); // one odd letter must not hold up the others
        }
        return false;
    }

    private void failed(OutboxMail letter, SendingFailed failure) {
        int attempt = letter.attempts() + 1;
        log.warn("Letter {} was not accepted (attempt {} of {})", letter.id().value(), attempt, MOST_ATTEMPTS);
        if (failure.isOfAddress()) refused(letter.message().to(), line(failure));
        if (failure.isFinal()) close(letter, Delivery.REFUSED, Optional.of(failure));
        else if (attempt >= MOST_ATTEMPTS) close(letter, Delivery.FAILED, Optional.of(failure));
        else keepError(letter, failure);
    }

    /** The letter has left by now, whatever fails here; the next one notes it again. */
    private void reached(EmailAddress reader) {
        try {
            jdbi.useHandle(handle -> RefusedAddresses.clear(handle, reader));
        } catch (RuntimeException e) {
            log.error("It could not be noted that an address is reached", e);
        }
    }

    private void refused(EmailAddress reader, String reply) {
        try {
            jdbi.useTransaction(handle -> RefusedAddresses.note(handle, reader, reply, clock.instant()));
        } catch (RuntimeException e) {
            boolean isNoted = e instanceof JdbiException fault && UniqueViolation.is(fault); // by another letter
            if (!isNoted) log.error("It could not be noted that an address is refused", e);
        }
    }

    private void keepError(OutboxMail letter, SendingFailed failure) {
        jdbi.useHandle(handle -> handle.createUpdate("update outbox set last_error = :error where id = :id")
                .bind("error", line(failure))
                .bind("id", letter.id())
                .execute());
    }

    private void close(OutboxMail letter, Delivery delivery, Optional<SendingFailed> failure) {
        jdbi.useHandle(handle -> {
            Update update = handle.createUpdate("""
                    update outbox set delivery = :delivery, delivered_at = :now, last_error = :error,
                        body = case when :erase then '' else body end, html = case when :erase then null else html end
                    where id = :id""");
            update.bind("delivery", delivery)
                    .bind("now", clock.instant())
                    .bind("error", failure.map(Postman::line))
                    .bind("erase", erasesText(delivery))
                    .bind("id", letter.id())
                    .execute();
        });
    }

    private static boolean erasesText(Delivery delivery) {
        return switch (delivery) {
            case SENT, USELESS -> true;
            case ON_DESK, FAILED, REFUSED -> false;
        };
    }

    private static String line(SendingFailed failure) {
        String text = String.valueOf(failure.getMessage()).replaceAll("\\s+", " ");
        return text.substring(0, Math.min(text.length(), LONGEST_ERROR));
    }
}
