package groundbass.audience.student;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.form.Outcome;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.Outbox;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * How educators get back in, and how they are told that their way in has changed. Asking for a new password is answered
 * alike for every address, and takes as long, so that nobody can find out who teaches here.
 */
public final class EducatorAccess {
    /** How long a link can be used. */
    public static final Duration VALID = Duration.ofMinutes(30);
    /** How many links an educator gets in an hour; more requests are answered alike and send nothing. */
    public static final int MOST_PER_HOUR = 3;

    private static final Duration KEPT = Duration.ofDays(1);

    private final Jdbi jdbi;
    private final Educators educators;
    private final Sessions sessions;
    private final Outbox outbox;
    private final Audit audit;
    private final Supplier<LetterHead> head;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public EducatorAccess(
            Jdbi jdbi,
            Educators educators,
            Sessions sessions,
            Outbox outbox,
            Audit audit,
            Supplier<LetterHead> head,
            Clock clock) {
        this.jdbi = jdbi;
        this.educators = educators;
        this.sessions = sessions;
        this.outbox = outbox;
        this.audit = audit;
        this.head = head;
        this.clock = clock;
    }

    /** Writes a link and the letter that carries it, where the address is an educator's. */
    public void forgotten(String email, Locale locale) {
        jdbi.useTransaction(handle -> {
            Instant now = clock.instant();
            var educator = educators.withEmail(email).filter(known -> mayAsk(handle, known.id(), now));
            SecretToken token = SecretToken.next();
            insert(handle, token, educator.map(Educator::id), now);
            educator.ifPresent(known -> {
                write(known.email(), to -> letters(locale).reset(known, to, token, now, VALID));
                audit.append(
                        handle,
                        Audit.STRANGER,
                        AuditWord.PASSWORD_FORGOTTEN,
                        known.id().value());
            });
        });
    }

    /** Whether a link still works; looking does not use it up, because mail scanners open what is mailed. */
    public boolean isValid(SecretToken token) {
        return jdbi.withHandle(handle -> owner(handle, token)).isPresent();
    }

    /**
     * Sets the password that a link allows to choose, ends every session of its educator and every other link of theirs.
     * A refused password leaves the link as it was.
     *
     * @return empty where the link works no more
     */
    public Optional<Outcome<Educator>> reset(SecretToken token, String chosen, Locale locale) {
        return jdbi.inTransaction(
                handle -> owner(handle, token).map(educator -> reset(handle, educator, chosen, locale)));
    }

    private Outcome<Educator> reset(Handle handle, EducatorId id, String chosen, Locale locale) {
        var outcome = educators.resetPassword(id, chosen);
        outcome.result().ifPresent(educator -> {
            handle.execute("delete from password_reset where educator_id = ?", id);
            sessions.closeAll(new Person.OfEducator(id));
            audit.append(handle, id, AuditWord.PASSWORD_RESET, id.value());
            write(educator.email(), to -> letters(locale).passwordChanged(educator, to, clock.instant()));
        });
        return outcome;
    }

    /** Writes to an educator who has changed the password at the desk. */
    public void tellPasswordChanged(Educator educator, Locale locale) {
        write(educator.email(), to -> letters(locale).passwordChanged(educator, to, clock.instant()));
    }

    /** Writes to the address that an educator had before. */
    public void tellAddressChanged(String before, Educator educator, Locale locale) {
        write(before, to -> letters(locale).addressChanged(educator, to, clock.instant()));
    }

    /** Ends the links of somebody whose desk is closed, within the caller's transaction. */
    public void forget(Handle handle, EducatorId educator) {
        handle.execute("delete from password_reset where educator_id = ?", educator);
    }

    /** Deletes links a day old. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from password_reset where created_at < :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }

    private AccessLetters letters(Locale locale) {
        return new AccessLetters(head.get(), locale);
    }

    /** An address that mail cannot reach (an educator may sign in with anything that looks like one) gets none. */
    private void write(String email, Function<EmailAddress, Mail> letter) {
        EmailAddress.read(email).ifPresent(to -> outbox.put(letter.apply(to)));
    }

    /** Two uses at once wait for each other here; the second finds the row gone. */
    private Optional<EducatorId> owner(Handle handle, SecretToken token) {
        return handle.createQuery("""
                        select educator_id from password_reset
                        where token_hash = :hash and expires_at > :now and educator_id is not null for update""")
                .bind("hash", token.hash())
                .bind("now", clock.instant())
                .mapTo(String.class)
                .findOne()
                .map(EducatorId::new);
    }

    private static boolean mayAsk(Handle handle, EducatorId educator, Instant now) {
        return handle.createQuery("""
                        select count(*) from password_reset where educator_id = :educator and created_at > :since""")
                        .bind("educator", educator)
                        .bind("since", now.minus(Duration.ofHours(1)))
                        .mapTo(Integer.class)
                        .one()
                < MOST_PER_HOUR;
    }

    private static void insert(Handle handle, SecretToken token, Optional<EducatorId> educator, Instant now) {
        handle.createUpdate("""
                        insert into password_reset (token_hash, educator_id, created_at, expires_at)
                        values (:hash, :educator, :now, :end)""")
                .bind("hash", token.hash())
                .bind("educator", educator)
                .bind("now", now)
                .bind("end", now.plus(VALID))
                .execute();
    }
}
