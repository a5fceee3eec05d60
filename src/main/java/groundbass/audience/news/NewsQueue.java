package groundbass.audience.news;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import java.time.Clock;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Whom what is to be told. A row is entered in the transaction in which a lesson goes live and marked in the one that
 * puts its letter into the outbox, so that a letter is neither lost nor written twice, wherever the program is cut short.
 */
public final class NewsQueue {
    private static final String HOLDING = """
            reader.series_id = :series and reader.ended_at is null
            and not exists (select 1 from refused_address refused where refused.email = reader.email)
            and exists (select 1 from student join download taken on taken.student_id = student.id
              where student.email = reader.email and taken.episode_id = :lesson and taken.release_id <> :release
                and not taken.robot and not taken.own)""";

    private final Jdbi jdbi;
    private final Clock clock;

    public NewsQueue(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Everybody who gets the news of a series is to be told that this lesson of it is out; nobody twice. */
    public int announce(Handle handle, SeriesId series, EpisodeId lesson) {
        return handle.createUpdate("""
                        insert into news_letter (about, email, reader_id, episode_id, kind, queued_at)
                        select :lesson, reader.email, reader.id, :lesson, :kind, :now from news_reader reader
                        where reader.series_id = :series and reader.ended_at is null
                          and not exists (select 1 from refused_address refused where refused.email = reader.email)
                          and not exists (select 1 from news_letter told
                            where told.about = :lesson and told.email = reader.email)""")
                .bind("series", series)
                .bind("lesson", lesson)
                .bind("kind", NewsKind.LESSON)
                .bind("now", clock.instant())
                .execute();
    }

    /**
     * Those who took an earlier release of a lesson, and agreed to be told, are to be told that this one is out; nobody
     * twice.
     */
    public int correct(Handle handle, SeriesId series, EpisodeId lesson, String release) {
        return handle.createUpdate("""
                        insert into news_letter (about, email, reader_id, episode_id, kind, queued_at)
                        select :release, reader.email, reader.id, :lesson, :kind, :now
                        from news_reader reader
                        where <holding>
                          and not exists (select 1 from news_letter told
                            where told.about = :release and told.email = reader.email)""")
                .define("holding", HOLDING)
                .bind("series", series)
                .bind("lesson", lesson)
                .bind("release", release)
                .bind("kind", NewsKind.CORRECTION)
                .bind("now", clock.instant())
                .execute();
    }

    /** How many hold a release of a lesson and agreed to be told of a correction. */
    public int holders(SeriesId series, EpisodeId lesson) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from news_reader reader where <holding>")
                .define("holding", HOLDING)
                .bind("series", series)
                .bind("lesson", lesson)
                .bind("release", "")
                .mapTo(Integer.class)
                .one());
    }

    /**
     * Letters that wait to be written, the longest waiting first; none to those who have ended it or are not reached, and
     * none about a lesson that was taken back, until it is put back.
     */
    public List<QueuedLetter> waiting(int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select letter.about, letter.kind, letter.episode_id as episode, letter.reader_id as reader,
                            letter.email, reader.locale, reader.agreed_at
                        from news_letter letter join news_reader reader on reader.id = letter.reader_id
                        where letter.written_at is null and reader.ended_at is null
                          and not exists (select 1 from episode back
                            where back.id = letter.episode_id and back.withdrawn_at is not null)
                          and not exists (select 1 from refused_address refused where refused.email = letter.email)
                        order by letter.queued_at, letter.about, letter.email fetch first :most rows only""")
                .bind("most", most)
                .mapTo(QueuedLetter.class)
                .list());
    }

    /** What waits to be written about a lesson waits from now on: it was taken back, and is out again. */
    public void waitAnew(Handle handle, EpisodeId lesson) {
        handle.createUpdate("""
                        update news_letter set queued_at = :now where episode_id = :lesson and written_at is null""")
                .bind("now", clock.instant())
                .bind("lesson", lesson)
                .execute();
    }

    /** Marks a letter as written. @return whether this call did, and so its caller puts it into the outbox */
    public boolean take(Handle handle, QueuedLetter letter) {
        return handle.createUpdate("""
                                update news_letter set written_at = :now
                                where about = :about and email = :email and written_at is null""")
                        .bind("now", clock.instant())
                        .bind("about", letter.about())
                        .bind("email", letter.email())
                        .execute()
                == 1;
    }

    /** Takes out every letter that waits to be written. @return how many there were */
    public int giveUpWaiting() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from news_letter where written_at is null")
                .execute());
    }

    /** How many letters about a lesson are written, and how many are still to be. */
    public Told told(EpisodeId lesson) {
        return jdbi.withHandle(handle ->
                handle.createQuery("""
                        select count(written_at) as written, count(*) - count(written_at) as waiting
                        from news_letter where episode_id = :lesson""").bind("lesson", lesson).mapTo(Told.class).one());
    }

    /** How far the telling has come. */
    public record Told(int written, int waiting) {
        public boolean isNothing() {
            return written + waiting == 0;
        }
    }
}
