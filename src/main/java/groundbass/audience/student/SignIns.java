package groundbass.audience.student;

import groundbass.catalog.settings.AgeSaid;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Signing in by a link that is mailed. Asking is answered alike for every address, known or not, so that nobody can find
 * out who studies here.
 */
public final class SignIns {
    /** How long a link can be used. */
    public static final Duration VALID = Duration.ofMinutes(20);
    /** How many links an address gets in an hour; more requests are answered alike and send nothing. */
    public static final int MOST_PER_HOUR = 5;

    private static final Duration KEPT = Duration.ofDays(1);

    /**
     * What the holder of an address agrees to when they sign in.
     *
     * @param wording version of the notice that stood beside the button
     * @param age     from which on nobody needs a guardian's consent, where the site asks
     * @param said    what they answered to that, if they did
     */
    public record Agreed(String wording, Optional<Integer> age, Optional<AgeSaid> said) {
        public Agreed {
            Objects.requireNonNull(wording);
            Objects.requireNonNull(age);
            Objects.requireNonNull(said);
        }

        Optional<String> ageWording() {
            return age.flatMap(years -> said.map(one -> one.wording(years)));
        }
    }

    private static final String SELECT = "select email, locale, expires_at, used_at, code_hash from sign_in ";

    private final Jdbi jdbi;
    private final Outbox outbox;
    private final Students students;
    private final Consents consents;
    private final Sessions sessions;
    private final Supplier<LetterHead> head;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public SignIns(
            Jdbi jdbi,
            Outbox outbox,
            Students students,
            Consents consents,
            Sessions sessions,
            Supplier<LetterHead> head,
            Clock clock) {
        this.jdbi = jdbi;
        this.outbox = outbox;
        this.students = students;
        this.consents = consents;
        this.sessions = sessions;
        this.head = head;
        this.clock = clock;
    }

    /** Writes a link and the letter that carries it. Nothing else is kept: whoever types an address may not be its holder. */
    public void request(EmailAddress email, Locale locale) {
        jdbi.useTransaction(handle -> {
            Instant now = clock.instant();
            if (askedSince(handle, email, now.minus(Duration.ofHours(1))) >= MOST_PER_HOUR) return;
            SecretToken token = SecretToken.next();
            SignInCode code = SignInCode.next();
            insert(handle, token, code, new Asked(email, locale), now);
            outbox.put(new SignInLetter(head.get()).to(email, locale, token, code, now, VALID));
        });
    }

    /** Looks at a link without using it up: mail scanners open what is mailed. */
    public LinkState peek(SecretToken token) {
        return jdbi.withHandle(handle -> state(find(handle, token)));
    }

    /**
     * Whether whoever has a link must still say something of their age before it signs them in.
     *
     * @param age from which on nobody needs a guardian's consent, where the site asks
     */
    public boolean wantsAge(SecretToken token, Optional<Integer> age) {
        var open = new Agreed("", age, Optional.empty());
        return jdbi.withHandle(handle -> find(handle, token)
                .map(row -> isAgeMissing(students.find(row.email()), open))
                .orElse(false));
    }

    /**
     * Uses a link up, and with it all others of its reader, and opens a session; makes the account on the first time.
     * Where an answer about age is missing nothing happens, and the link stays good.
     *
     * @param agreed what its holder agrees to, which is kept with the account
     * @param device what it is used on
     */
    public SignedIn use(SecretToken token, Agreed agreed, Device device) {
        return jdbi.inTransaction(handle -> {
            Optional<Row> row = find(handle, token);
            if (row.isEmpty()) {
                return new SignedIn.Refused(LinkState.UNKNOWN);
            }
            lockAllOf(handle, row.get().email());
            Optional<Row> locked = find(handle, token);
            LinkState state = state(locked);
            return switch (state) {
                case VALID -> signIn(handle, row.get(), agreed, device);
                case EXPIRED, USED, UNKNOWN -> new SignedIn.Refused(state);
            };
        });
    }

    /** The same with the code that stands beside the newest link of an address; any other is unknown. */
    public SignedIn use(EmailAddress email, SignInCode code, Agreed agreed, Device device) {
        return jdbi.inTransaction(handle -> {
            lockAllOf(handle, email);
            Optional<Row> newest = newest(handle, email);
            boolean meant = newest.filter(row -> row.codeHash().equals(code.hash(email)))
                    .isPresent();
            return meant && state(newest) == LinkState.VALID
                    ? signIn(handle, newest.get(), agreed, device)
                    : new SignedIn.Refused(LinkState.UNKNOWN);
        });
    }

    /** The links that were asked for with an address and are still kept, the newest first. */
    public List<SignInRequest> of(EmailAddress email) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select created_at as asked_at, expires_at, used_at from sign_in where email = :email
                        order by created_at desc, token_hash""")
                .bind("email", email)
                .mapTo(SignInRequest.class)
                .list());
    }

    /** Deletes links a day old, and with them the addresses of those who never came. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from sign_in where created_at < :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }

    private SignedIn signIn(Handle handle, Row row, Agreed agreed, Device device) {
        Optional<Student> known = students.find(row.email());
        if (isAgeMissing(known, agreed)) {
            return new SignedIn.AgeWanted();
        }
        handle.createUpdate("update sign_in set used_at = :now where email = :email and used_at is null")
                .bind("now", clock.instant())
                .bind("email", row.email())
                .execute();
        StudentId student = known.orElseGet(() -> students.create(handle, row.email(), row.locale()))
                .id();
        consents.give(student, Purpose.ACCOUNT, agreed.wording());
        agreed.ageWording().ifPresent(wording -> consents.give(student, Purpose.AGE, wording));
        SecretToken session = sessions.open(new Person.OfStudent(student), device);
        return new SignedIn.As(student, session, known.isEmpty());
    }

    /** Whether the site asks, and neither now nor with the account is an answer that holds. */
    private boolean isAgeMissing(Optional<Student> known, Agreed agreed) {
        if (agreed.age().isEmpty() || agreed.said().isPresent()) {
            return false;
        }
        int age = agreed.age().get();
        return known.stream()
                .flatMap(student -> consents.of(student.id()).stream())
                .filter(given ->
                        given.purpose() == Purpose.AGE && given.withdrawnAt().isEmpty())
                .noneMatch(given -> AgeSaid.holds(given.wording(), age));
    }

    /** Two links of one new address, used at once, must not make two accounts: the second waits here. */
    private static void lockAllOf(Handle handle, EmailAddress email) {
        handle.createQuery("select token_hash from sign_in where email = :email order by token_hash for update")
                .bind("email", email)
                .mapTo(String.class)
                .list();
    }

    private LinkState state(Optional<Row> row) {
        if (row.isEmpty()) {
            return LinkState.UNKNOWN;
        }
        if (row.get().usedAt().isPresent()) return LinkState.USED;
        return row.get().expiresAt().isAfter(clock.instant()) ? LinkState.VALID : LinkState.EXPIRED;
    }

    private static int askedSince(Handle handle, EmailAddress email, Instant since) {
        return handle.createQuery("select count(*) from sign_in where email = :email and created_at > :since")
                .bind("email", email)
                .bind("since", since)
                .mapTo(Integer.class)
                .one();
    }

    /** What a link is asked for with. */
    private record Asked(EmailAddress email, Locale locale) {}

    private static void insert(Handle handle, SecretToken token, SignInCode code, Asked asked, Instant now) {
        handle.createUpdate("""
                        insert into sign_in (token_hash, code_hash, email, locale, created_at, expires_at)
                        values (:hash, :code, :email, :locale, :now, :end)""")
                .bind("hash", token.hash())
                .bind("code", code.hash(asked.email()))
                .bind("email", asked.email())
                .bind("locale", asked.locale())
                .bind("now", now)
                .bind("end", now.plus(VALID))
                .execute();
    }

    private static Optional<Row> find(Handle handle, SecretToken token) {
        return handle.createQuery(SELECT + "where token_hash = :hash")
                .bind("hash", token.hash())
                .mapTo(Row.class)
                .findOne();
    }

    private static Optional<Row> newest(Handle handle, EmailAddress email) {
        return handle.createQuery(
                        SELECT + "where email = :email order by created_at desc, token_hash fetch first 1 row only")
                .bind("email", email)
                .mapTo(Row.class)
                .findOne();
    }

    private record Row(
            EmailAddress email, Locale locale, Instant expiresAt, Optional<Instant> usedAt, String codeHash) {}
}
