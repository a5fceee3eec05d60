package groundbass.release.find;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Revisions;
import groundbass.document.Level;
import groundbass.lesson.Lesson;
import groundbass.lesson.LessonTraits;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.release.find.Choices.SeriesName;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.jdbi.v3.core.transaction.TransactionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Lessons that are out, by what they can be found by. A row holds what was read off the release that readers get; where
 * that is another by now, or the program that brought it out knew no such rows, it is read again.
 */
public final class LessonIndex {
    private static final Logger log = LoggerFactory.getLogger(LessonIndex.class);
    private static final String FROM =
            " from lesson_traits t join episode e on e.id = t.episode_id join series s on s.id = e.series_id";

    private final Jdbi jdbi;
    private final Releases releases;
    private final Revisions revisions;
    private final Set<ReleaseId> unreadable = ConcurrentHashMap.newKeySet();

    public LessonIndex(Jdbi jdbi, Releases releases, Revisions revisions) {
        this.jdbi = jdbi;
        this.releases = releases;
        this.revisions = revisions;
    }

    /**
     * Reads what is out and was not read yet, so many at most, the newest first. May run as often as anyone likes; what
     * cannot be read is told once and is no longer in the way of what can.
     */
    public void catchUp(int most) {
        unread(most + unreadable.size()).stream()
                .filter(id -> !unreadable.contains(id))
                .limit(most)
                .forEach(this::attempt);
    }

    private void attempt(ReleaseId id) {
        try {
            releases.find(id).ifPresent(this::read);
        } catch (ConnectionException | UnableToExecuteStatementException | TransactionException e) {
            throw e; // of the database, which says nothing of the release: the next pass reads it
        } catch (RuntimeException e) {
            unreadable.add(id);
            log.error("release {} cannot be found by what it says", id, e);
        }
    }

    private List<ReleaseId> unread(int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select release.id from release
                        where not exists (select 1 from lesson_traits t where t.release_id = release.id)
                          and %s
                        order by release.published_at desc, release.id fetch first :most rows only""".formatted(Releases.CURRENT))
                .bind("most", most)
                .mapTo(ReleaseId.class)
                .list());
    }

    private void read(Release release) {
        var revision = revisions
                .find(release.spec().revision())
                .orElseThrow(() -> new IllegalStateException("there is no such revision"));
        write(release.episode(), release.id(), LessonTraits.of(Lesson.of(revision.document())));
    }

    void write(EpisodeId episode, ReleaseId release, LessonTraits traits) {
        jdbi.useTransaction(handle -> {
            handle.execute("delete from lesson_traits where episode_id = ?", episode.value());
            handle.createUpdate("""
                            insert into lesson_traits
                                (episode_id, release_id, techniques, key_name, meter, tempo, strings, words, title_words)
                            values (:episode, :release, :techniques, :key, :meter, :tempo, :strings, :words,
                                :titleWords)""")
                    .bind("episode", episode)
                    .bind("release", release)
                    .bind("techniques", Lists.join(traits.techniques()))
                    .bind("key", traits.key())
                    .bind("meter", traits.meter())
                    .bind("tempo", traits.tempo())
                    .bind("strings", traits.strings())
                    .bind("words", Lists.join(traits.words()))
                    .bind("titleWords", Lists.join(traits.titleWords()))
                    .execute();
        });
    }

    /** So many of those that are found, after so many. */
    public List<FoundLesson> find(LessonQuery query, int skipped, int most) {
        var conditions = new Conditions(query);
        return jdbi.withHandle(handle -> conditions
                .bind(handle.createQuery("""
                        select e.id as episode, s.slug as series, s.title as series_title, s.zone, e.number,
                            e.title, e.level, e.published_at, t.techniques, t.key_name, t.meter, t.tempo, t.strings,
                            t.release_id as release,
                            exists (select 1 from release_file f
                                where f.release_id = t.release_id and f.name = :picture) as pictured
                        """ + FROM + conditions.where() + conditions.orderBy()
                        + " offset :skipped rows fetch first :most rows only"))
                .bind("picture", ReleaseFile.CARD_PICTURE)
                .bind("skipped", skipped)
                .bind("most", most)
                .mapTo(FoundLesson.class)
                .list());
    }

    /** How many are found in all. */
    public int count(LessonQuery query) {
        var conditions = new Conditions(query);
        return jdbi.withHandle(handle -> conditions
                .bind(handle.createQuery("select count(*)" + FROM + conditions.where()))
                .mapTo(Integer.class)
                .one());
    }

    /** The plucking hand's techniques of those of the lessons that were read, by line text's words. */
    public Map<EpisodeId, List<String>> techniques(List<EpisodeId> lessons) {
        if (lessons.isEmpty()) {
            return Map.of();
        }
        return jdbi.withHandle(handle -> handle
                .createQuery(
                        "select episode_id as episode, techniques from lesson_traits where episode_id in (<lessons>)")
                .bindList("lessons", lessons)
                .mapTo(Played.class)
                .stream()
                .collect(Collectors.toMap(Played::episode, played -> Lists.split(played.techniques()))));
    }

    private record Played(EpisodeId episode, String techniques) {}

    /** What can be chosen from. */
    public Choices choices() {
        var techniques = new TreeSet<String>();
        distinct("t.techniques", String.class).forEach(column -> techniques.addAll(Lists.split(column)));
        return new Choices(
                List.copyOf(techniques),
                distinct("e.level", Level.class).stream().sorted().toList(),
                distinct("t.key_name", String.class),
                distinct("t.meter", String.class),
                distinct("t.strings", Integer.class),
                series());
    }

    private <T> List<T> distinct(String column, Class<T> type) {
        return jdbi.withHandle(handle -> handle.createQuery("select distinct " + column + FROM
                        + " where e.published_at is not null and e.withdrawn_at is null order by 1")
                .mapTo(type)
                .list());
    }

    private List<SeriesName> series() {
        return jdbi.withHandle(handle -> handle.createQuery("select distinct s.title, s.slug" + FROM
                        + " where e.published_at is not null and e.withdrawn_at is null order by s.title, s.slug")
                .mapTo(SeriesName.class)
                .list());
    }
}
