package groundbass.audience.news;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.LinkState;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Asking for news with an address that is not proven yet: a letter with a link goes there, and only whoever has it can
 * agree. Asking is answered alike for every address, so that nobody learns who reads what.
 */
public final class NewsRequests {
    /** How long a link can be used. */
    public static final Duration VALID = Duration.ofDays(1);

    /** How many links an address gets in an hour, whatever series they are for; more requests send nothing. */
    static final int MOST_PER_HOUR = 3;

    private static final String SELECT = """
            select series_id as series, email, locale, wording, asked_on, created_at as asked_at, expires_at, used_at
            from news_request\s""";

    private final Jdbi jdbi;
    private final Outbox outbox;
    private final NewsReaders readers;
    private final Supplier<LetterHead> head;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public NewsRequests(Jdbi jdbi, Outbox outbox, NewsReaders readers, Supplier<LetterHead> head, Clock clock) {
        this.jdbi = jdbi;
        this.outbox = outbox;
        this.readers = readers;
        this.head = head;
        this.clock = clock;
    }

    /** Writes a link and the letter that carries it. */
    public void ask(Series series, Ask ask) {
        jdbi.useTransaction(handle -> {
            Instant now = clock.instant();
            if (askedSince(handle, ask.email(), now.minus(Duration.ofHours(1))) >= MOST_PER_HOUR) return;
            SecretToken token = SecretToken.next();
            insert(handle, token, ask, now);
            outbox.put(new ConfirmLetter(head.get()).to(ask, series.title(), token, now, VALID));
        });
    }

    /** Looks at a link without using it up: mail scanners open what is mailed. */
    public LinkState peek(SecretToken token) {
        return jdbi.withHandle(handle -> find(handle, token)).map(this::state).orElse(LinkState.UNKNOWN);
    }

    /** What a link asks for, whatever it is worth now. */
    public Optional<SeriesId> series(SecretToken token) {
        return jdbi.withHandle(handle -> find(handle, token)).map(Row::series);
    }

    /** Uses a link up: from here on its reader gets the news. Empty where it does not work; {@link #peek} says why. */
    public Optional<SeriesId> agree(SecretToken token) {
        return jdbi.inTransaction(handle -> {
            boolean mine = handle.createUpdate("""
                            update news_request set used_at = :now
                            where token_hash = :hash and used_at is null and expires_at > :now""")
                            .bind("now", clock.instant())
                            .bind("hash", token.hash())
                            .execute()
                    == 1;
            var row = find(handle, token).filter(found -> mine);
            row.ifPresent(found -> readers.agree(handle, found.ask(), found.askedAt()));
            return row.map(Row::series);
        });
    }

    /** What an address asked for and is still kept, the newest first. */
    public List<Asked> of(EmailAddress email) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where email = :email order by created_at desc")
                .bind("email", email)
                .mapTo(Row.class)
                .map(row -> new Asked(row.series(), row.askedAt(), row.usedAt()))
                .list());
    }

    /** That somebody asked, and when they agreed. */
    public record Asked(SeriesId series, Instant askedAt, Optional<Instant> usedAt) {}

    private LinkState state(Row row) {
        if (row.usedAt().isPresent()) return LinkState.USED;
        return row.expiresAt().isAfter(clock.instant()) ? LinkState.VALID : LinkState.EXPIRED;
    }

    private static int askedSince(Handle handle, EmailAddress email, Instant since) {
        return handle.createQuery("select count(*) from news_request where email = :email and created_at > :since")
                .bind("email", email)
                .bind("since", since)
                .mapTo(Integer.class)
                .one();
    }

    private static void insert(Handle handle, SecretToken token, Ask ask, Instant now) {
        handle.createUpdate("""
                        insert into news_request (token_hash, series_id, email, locale, wording, asked_on, created_at,
                            expires_at)
                        values (:hash, :series, :email, :locale, :wording, :askedOn, :now, :end)""")
                .bindMethods(ask)
                .bind("hash", token.hash())
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

    private record Row(
            SeriesId series,
            EmailAddress email,
            Locale locale,
            String wording,
            AskedOn askedOn,
            Instant askedAt,
            Instant expiresAt,
            Optional<Instant> usedAt) {
        Ask ask() {
            return new Ask(series, email, locale, wording, askedOn);
        }
    }
}
