package groundbass.audience.news;

import groundbass.audience.student.SignedId;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRows;
import groundbass.post.EmailAddress;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Who gets the news of which series. Ending it needs no account: each letter carries a link that does it. */
public final class NewsReaders {
    /** How long it is kept, after its end, that somebody had agreed: they may ask why they were written to. */
    static final Duration PROOF_KEPT = Duration.ofDays(30);

    private static final Duration REQUEST_KEPT = Duration.ofDays(2);
    private static final Duration LETTER_KEPT = Duration.ofDays(30);
    private static final Duration REFUSAL_KEPT = Duration.ofDays(30);

    private static final String SETTING = "secret.news-link";
    private static final String SELECT = """
            select id, series_id as series, email, locale, wording, asked_on, asked_at, agreed_at, ended_at
            from news_reader\s""";

    private final Jdbi jdbi;
    private final SignedId links;
    private final Clock clock;

    public NewsReaders(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.links = SignedId.of(jdbi, SETTING);
        this.clock = clock;
    }

    /** What stands in a letter's link to end these letters. It works for as long as they are sent. */
    public String key(NewsReaderId reader) {
        return links.sign(reader.value());
    }

    /** Whom the link of a letter names, if it is one of ours and they still get news or did until a while ago. */
    public Optional<NewsReader> find(String key) {
        return links.verify(key)
                .flatMap(id -> jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                        .bind("id", id)
                        .mapTo(NewsReader.class)
                        .findOne()));
    }

    /** All that an address agreed to, the oldest first; also what was ended and is not forgotten yet. */
    public List<NewsReader> of(EmailAddress email) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where email = :email order by agreed_at, id")
                .bind("email", email)
                .mapTo(NewsReader.class)
                .list());
    }

    /** Enters somebody whose address is proven: by the link of a letter, or because they are signed in. */
    public void agree(Ask ask) {
        jdbi.useTransaction(handle -> agree(handle, ask, clock.instant()));
    }

    /** Within the caller's transaction; waits for others who agree to the news of the same series. */
    void agree(Handle handle, Ask ask, Instant askedAt) {
        SeriesRows.lock(handle, ask.series());
        int known = write(handle, ask, askedAt, """
                update news_reader set locale = :locale, wording = :wording, asked_on = :askedOn, asked_at = :asked,
                    agreed_at = :now, ended_at = null
                where series_id = :series and email = :email""");
        if (known == 0) {
            write(handle, ask, askedAt, """
                    insert into news_reader (id, series_id, email, locale, wording, asked_on, asked_at, agreed_at)
                    values (:id, :series, :email, :locale, :wording, :askedOn, :asked, :now)""");
        }
    }

    private int write(Handle handle, Ask ask, Instant askedAt, String sql) {
        var update =
                handle.createUpdate(sql).bindMethods(ask).bind("asked", askedAt).bind("now", clock.instant());
        return (sql.startsWith("insert") ? update.bind("id", NewsReaderId.next()) : update).execute();
    }

    /** Ends it at once, with all letters that are not written yet; can be done twice. */
    public void end(NewsReaderId reader) {
        jdbi.useTransaction(handle -> {
            handle.createUpdate("update news_reader set ended_at = :now where id = :id and ended_at is null")
                    .bind("now", clock.instant())
                    .bind("id", reader)
                    .execute();
            handle.createUpdate("delete from news_letter where reader_id = :id and written_at is null")
                    .bind("id", reader)
                    .execute();
        });
    }

    /** Ends the news of a series for an address. */
    public void end(SeriesId series, EmailAddress email) {
        of(email).stream().filter(reader -> reader.series().equals(series)).forEach(reader -> end(reader.id()));
    }

    /** The language of letters to an address from now on. */
    public void speak(EmailAddress email, Locale locale) {
        jdbi.useHandle(handle -> handle.createUpdate("update news_reader set locale = :locale where email = :email")
                .bind("locale", locale)
                .bind("email", email)
                .execute());
    }

    /** How many get the news of a series, and how many more would if their mail server took it. */
    public Count count(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select count(*) - count(refused.email) as reached, count(refused.email) as refused
                        from news_reader reader left join refused_address refused on refused.email = reader.email
                        where reader.series_id = :series and reader.ended_at is null""")
                .bind("series", series)
                .mapTo(Count.class)
                .one());
    }

    /**
     * How many there are.
     *
     * @param refused whose address was refused for good, and who get nothing until a letter reaches them again
     */
    public record Count(int reached, int refused) {}

    /** Takes out all that is kept of an address here, because its reader has left. */
    public void forget(EmailAddress email) {
        jdbi.useTransaction(handle -> {
            handle.execute("delete from news_request where email = ?", email);
            handle.execute("delete from news_letter where email = ?", email);
            handle.execute("delete from news_reader where email = ?", email);
        });
    }

    /**
     * Addresses that a mail server refused a while ago, and of which nothing else is kept: nobody who is at home here can
     * be reached there, and nobody is told that it was refused.
     */
    public List<EmailAddress> strangers() {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select refused.email from refused_address refused
                        where refused.refused_at < :before
                          and not exists (select 1 from student where student.email = refused.email)
                          and not exists (select 1 from news_reader reader
                            where reader.email = refused.email and reader.ended_at is null)""")
                .bind("before", clock.instant().minus(REFUSAL_KEPT))
                .mapTo(EmailAddress.class)
                .list());
    }

    /**
     * Forgets who ended it a while ago, who asked and did not agree, and which letters were entered a month ago: a lesson
     * goes live once, so nobody can be told of it again. What waits for a lesson that was taken back goes on waiting.
     */
    public void purge() {
        Instant now = clock.instant();
        jdbi.useTransaction(handle -> {
            handle.execute("delete from news_reader where ended_at < ?", now.minus(PROOF_KEPT));
            handle.execute("delete from news_request where created_at < ?", now.minus(REQUEST_KEPT));
            handle.execute("""
                    delete from news_letter where queued_at < ? and (written_at is not null or not exists (
                        select 1 from episode back
                        where back.id = news_letter.episode_id and back.withdrawn_at is not null))""", now.minus(LETTER_KEPT));
        });
    }
}
