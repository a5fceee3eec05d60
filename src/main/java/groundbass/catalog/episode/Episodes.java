package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.identity.Slug;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.statement.Query;

/**
 * The rows of episodes: found by everyone, and led from draft to scheduled to published by whoever keeps the calendar.
 * Every change belongs to a transaction of the caller's.
 */
public final class Episodes {
    private static final int LONGEST_TITLE = 200;
    private static final int LONGEST_SUMMARY = 2000;
    private static final Slug WITHOUT_LETTERS = new Slug("episode");

    private final Jdbi jdbi;

    public Episodes(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    public Optional<Episode> find(EpisodeId id) {
        return one("where e.id = :id and e.deleted_at is null", query -> query.bind("id", id));
    }

    /** What these are called, by one query; without those that are there no more. */
    public Map<EpisodeId, EpisodeTitle> titles(Collection<EpisodeId> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select e.id as episode, e.title, s.title as series, e.published_at is not null as published
                        from episode e join series s on s.id = e.series_id
                        where e.deleted_at is null and e.id in (<ids>)""")
                .bindList("ids", List.copyOf(Set.copyOf(ids)))
                .mapTo(EpisodeTitle.class)
                .collect(Collectors.toMap(EpisodeTitle::episode, title -> title)));
    }

    /** The episode, where this educator may do that with its series: for all others it is not there. */
    public Optional<Episode> open(EducatorId who, Deed deed, EpisodeId id) {
        return one(
                "where e.id = :id and e.deleted_at is null and e.series_id in " + deed.series(),
                query -> query.bind("id", id).bind("who", who));
    }

    /** By its readable address, published or not. */
    public Optional<Episode> find(Slug series, int number) {
        return one(
                "join series s on s.id = e.series_id"
                        + " where s.slug = :slug and e.number = :number and e.deleted_at is null",
                query -> query.bind("slug", series).bind("number", number));
    }

    /** All that have a number in a series, also drafts that were thrown away, whose numbers are still taken. */
    List<Episode> in(SeriesId series) {
        return list("where e.series_id = :series order by e.number", query -> query.bind("series", series));
    }

    /** For the desk: so many of a series by number, after those that are skipped. */
    public List<Episode> in(SeriesId series, int skipped, int most) {
        return list(
                """
                where e.series_id = :series and e.deleted_at is null order by e.number
                offset :skipped rows fetch next :most rows only""",
                query -> query.bind("series", series).bind("skipped", skipped).bind("most", most));
    }

    /**
     * Lessons in which somebody may write, of all their series, those written last first.
     *
     * @param words each of which the title has, whatever the case; of none, all are found
     */
    public List<LastWritten> writtenLast(EducatorId who, List<String> words, int skipped, int most) {
        String matching = IntStream.range(0, words.size())
                .mapToObj(i -> " and lower(e.title) like :word" + i + " escape '!'")
                .collect(Collectors.joining());
        return jdbi.withHandle(handle -> {
            var query = handle.createQuery("""
                            select coalesce(d.saved_at, e.created_at) as at,\s""" + EpisodeRow.COLUMNS + """
                            \s from episode e left join draft d on d.episode_id = e.id
                            where e.deleted_at is null and e.series_id in\s""" + Deed.WRITE.series() + matching + """
                            \s order by at desc, e.id offset :skipped rows fetch next :most rows only""")
                    .bind("who", who)
                    .bind("skipped", skipped)
                    .bind("most", most);
            for (int i = 0; i < words.size(); i++) {
                query.bind("word" + i, "%" + literal(words.get(i).toLowerCase(Locale.ROOT)) + "%");
            }
            return query.mapTo(WrittenRow.class).map(WrittenRow::lastWritten).list();
        });
    }

    private record WrittenRow(@Nested EpisodeRow episode, Instant at) {
        LastWritten lastWritten() {
            return new LastWritten(episode.episode(), at);
        }
    }

    /** A word in which nothing stands for anything else. */
    private static String literal(String word) {
        return word.replace("!", "!!").replace("%", "!%").replace("_", "!_");
    }

    /** How many a series has, published or not. */
    public int countIn(SeriesId series) {
        return count("series_id = :series and deleted_at is null", series);
    }

    private int count(String condition, SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from episode where " + condition)
                .bind("series", series)
                .mapTo(Integer.class)
                .one());
    }

    /** For the desk: those of a series that are not out, and so many of the latest that are; all of them by number. */
    public List<Episode> inHand(SeriesId series, int published) {
        return list("""
                where e.series_id = :series and e.deleted_at is null and (e.published_at is null or e.id in (
                    select id from episode where series_id = :series and published_at is not null
                    order by number desc fetch first :published rows only))
                order by e.number""", query -> query.bind("series", series).bind("published", published));
    }

    /** For everyone: those of a series that are out, by number. */
    public List<Episode> publishedIn(SeriesId series) {
        return list(
                "where e.series_id = :series and e.published_at is not null and e.withdrawn_at is null order by e.number",
                query -> query.bind("series", series));
    }

    /** Those of a series that ever were out, by number. */
    public List<Episode> everPublishedIn(SeriesId series) {
        return list(
                "where e.series_id = :series and e.published_at is not null order by e.number",
                query -> query.bind("series", series));
    }

    /** Of these so many, after those that are skipped. */
    public List<Episode> everPublishedIn(SeriesId series, int skipped, int most) {
        return list(
                """
                where e.series_id = :series and e.published_at is not null order by e.number
                offset :skipped rows fetch next :most rows only""",
                query -> query.bind("series", series).bind("skipped", skipped).bind("most", most));
    }

    /** How many of a series ever were out. */
    public int countEverPublishedIn(SeriesId series) {
        return count("series_id = :series and published_at is not null", series);
    }

    /** The episodes beside this one that are out, by number. */
    public Neighbours neighbours(Episode episode) {
        return new Neighbours(
                beside(episode, "e.number < :number", "desc"), beside(episode, "e.number > :number", "asc"));
    }

    private Optional<Episode> beside(Episode episode, String side, String order) {
        return one(
                "where e.series_id = :series and e.published_at is not null and e.withdrawn_at is null and " + side
                        + " order by e.number " + order + " limit 1",
                query -> query.bind("series", episode.series()).bind("number", episode.number()));
    }

    /** Those that wait for their hour, the next one first. */
    public List<Episode> scheduled() {
        return list("""
                where e.published_at is null and e.scheduled_at is not null
                order by e.scheduled_at, e.series_id, e.number""", UnaryOperator.identity());
    }

    private Optional<Episode> one(String rest, UnaryOperator<Query> bound) {
        return jdbi.withHandle(handle -> bound.apply(handle.createQuery(EpisodeRow.SELECT + rest))
                .mapTo(EpisodeRow.class)
                .findOne()
                .map(EpisodeRow::episode));
    }

    private List<Episode> list(String rest, UnaryOperator<Query> bound) {
        return jdbi.withHandle(handle -> bound.apply(handle.createQuery(EpisodeRow.SELECT + rest))
                .mapTo(EpisodeRow.class)
                .map(EpisodeRow::episode)
                .list());
    }

    /** Whether any lesson here has this id, also one that was thrown away. */
    public boolean isKnown(EpisodeId id) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from episode where id = :id")
                        .bind("id", id)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    void insert(Handle handle, Episode episode) {
        handle.createUpdate("""
                        insert into episode (id, series_id, number, slug, title, level, summary, created_at)
                        values (:id, :series, :number, :slug, :title, :level, :summary, :createdAt)""").bindMethods(episode).execute();
    }

    /** The episode as it is, which nobody else changes until the transaction ends. */
    public Optional<Episode> lock(Handle handle, EpisodeId id) {
        return lockRow(handle, id) ? find(id) : Optional.empty();
    }

    static boolean lockRow(Handle handle, EpisodeId id) {
        return handle.createQuery("select id from episode where id = :id for update")
                .bind("id", id)
                .mapTo(EpisodeId.class)
                .findOne()
                .isPresent();
    }

    /** Until the transaction ends, nobody else changes or publishes an episode of this series. */
    void lockAll(Handle handle, SeriesId series) {
        handle.createQuery("select id from episode where series_id = :series order by id for update")
                .bind("series", series)
                .mapTo(EpisodeId.class)
                .list();
    }

    /**
     * Makes lists show the title, level and summary of this document: of a draft while it is typed, of the revision
     * when that goes out. An unpublished episode takes its slug from the title too; a blank title changes nothing.
     */
    public void describe(Handle handle, EpisodeId id, EpisodeDocument document) {
        Optional<String> title = Optional.of(document.title().strip()).filter(text -> !text.isEmpty());
        title.ifPresent(text -> setTitle(handle, id, cut(text, LONGEST_TITLE)));
        handle.createUpdate("update episode set level = :level, summary = :summary where id = :id")
                .bind("id", id)
                .bind("level", document.level())
                .bind("summary", cut(document.summary().strip(), LONGEST_SUMMARY))
                .execute();
    }

    private static void setTitle(Handle handle, EpisodeId id, String title) {
        handle.createUpdate("""
                        update episode set title = :title,
                               slug = case when published_at is null then :slug else slug end
                        where id = :id""")
                .bind("id", id)
                .bind("title", title)
                .bind("slug", slug(title))
                .execute();
    }

    private static String cut(String text, int longest) {
        return text.substring(0, Math.min(text.length(), longest));
    }

    static Slug slug(String title) {
        return Slug.of(title, WITHOUT_LETTERS);
    }

    /** The slug that an episode has once this document is out: a published one keeps its own. */
    public static Slug slug(Episode episode, EpisodeDocument document) {
        return episode.isPublished() || document.title().isBlank()
                ? episode.slug()
                : slug(document.title().strip());
    }

    /**
     * Promises an unpublished episode for an instant; replaces an earlier promise.
     *
     * @return false where it is published already, or gone
     */
    public boolean schedule(Handle handle, EpisodeId id, EpisodeState.Scheduled promise) {
        return handle.createUpdate("""
                                update episode
                                set scheduled_at = :at, scheduled_zone = :zone, scheduled_local = :localHour,
                                    promised_at = :madeAt, promised_release = :firstRelease
                                where id = :id and published_at is null""")
                        .bindMethods(promise)
                        .bind("localHour", promise.local().toString())
                        .bind("id", id)
                        .execute()
                == 1;
    }

    /** Takes the promise back. @return false where there was none, or where it is published already */
    public boolean unschedule(Handle handle, EpisodeId id) {
        return handle.createUpdate("""
                                update episode
                                set scheduled_at = null, scheduled_zone = null, scheduled_local = null
                                where id = :id and published_at is null and scheduled_at is not null""").bind("id", id).execute() == 1;
    }

    /**
     * Makes an episode published, once: of any number of callers, one is told true, and that one announces it.
     * From here on its number and slug stay.
     */
    public boolean markPublished(Handle handle, EpisodeId id, Instant now) {
        return handle.createUpdate("update episode set published_at = :now where id = :id and published_at is null")
                        .bind("id", id)
                        .bind("now", now)
                        .execute()
                == 1;
    }

    /** Takes one back that is out. @return false where it is not */
    public boolean takeBack(Handle handle, EpisodeId id, Withdrawal withdrawal) {
        return handle.createUpdate("""
                                update episode set withdrawn_at = :at, withdrawn_why = :why
                                where id = :id and published_at is not null and withdrawn_at is null""").bindMethods(withdrawal).bind("id", id).execute() == 1;
    }

    /** Puts one back that was taken back. @return false where it was not */
    public boolean putBack(Handle handle, EpisodeId id) {
        return handle.createUpdate("""
                                update episode set withdrawn_at = null, withdrawn_why = ''
                                where id = :id and withdrawn_at is not null""").bind("id", id).execute() == 1;
    }

    /** Throws a draft away that nothing is promised of. @return false where it is none */
    public boolean throwAway(Handle handle, EpisodeId id, Instant now) {
        return handle.createUpdate("""
                                update episode set deleted_at = :now
                                where id = :id and published_at is null and scheduled_at is null and deleted_at is null""").bind("now", now).bind("id", id).execute() == 1;
    }

    /** Fetches a draft back that was thrown away from a series in which this educator writes. @return false where there is none */
    public boolean fetchBack(Handle handle, EducatorId who, EpisodeId id) {
        return handle.createUpdate("update episode set deleted_at = null"
                                + " where id = :id and deleted_at is not null and series_id in " + Deed.WRITE.series())
                        .bind("id", id)
                        .bind("who", who)
                        .execute()
                == 1;
    }

    /** What was thrown away from series in which this educator writes, and can still be fetched back, the latest first. */
    public List<ThrownAway> thrownAway(EducatorId who) {
        return jdbi.withHandle(
                handle -> handle.createQuery("""
                        select e.id, s.title as series, e.number, e.title, e.deleted_at as at
                        from episode e join series s on s.id = e.series_id
                        where e.deleted_at is not null and s.id in\s""" + Deed.WRITE.series() + "order by e.deleted_at desc, e.id")
                        .bind("who", who)
                        .mapTo(ThrownAway.class)
                        .list());
    }

    /** What was thrown away before this instant, by whomever. */
    public List<EpisodeId> thrownAwayBefore(Instant before) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select id from episode where deleted_at < :before order by id")
                        .bind("before", before)
                        .mapTo(EpisodeId.class)
                        .list());
    }

    /** Whether a draft was thrown away before this instant still; it is neither fetched back nor deleted meanwhile. */
    public boolean lockThrownAway(Handle handle, EpisodeId id, Instant before) {
        return handle.createQuery("select id from episode where id = :id and deleted_at < :before for update")
                .bind("id", id)
                .bind("before", before)
                .mapTo(EpisodeId.class)
                .findOne()
                .isPresent();
    }

    /** Deletes a draft that was thrown away, with all that was written of it; what was made of it is gone before. */
    public void forget(Handle handle, EpisodeId id) {
        handle.execute("delete from draft where episode_id = ?", id);
        handle.execute("delete from revision where episode_id = ?", id);
        handle.execute("delete from episode where id = ? and deleted_at is not null", id);
    }

    /** Goes by way of negative numbers, because a number is unique at every moment. */
    void setNumbers(Handle handle, Map<EpisodeId, Integer> numbers) {
        numbers.forEach((id, number) -> setNumber(handle, id, -number));
        numbers.forEach((id, number) -> setNumber(handle, id, number));
    }

    private static void setNumber(Handle handle, EpisodeId id, int number) {
        handle.createUpdate("update episode set number = :number where id = :id and published_at is null")
                .bind("id", id)
                .bind("number", number)
                .execute();
    }
}
