package groundbass.catalog.episode;

import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.identity.Slug;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Every change to an episode's row, each within the caller's transaction. */
final class EpisodeChanges {
    private static final int LONGEST_TITLE = 200;
    private static final int LONGEST_SUMMARY = 2000;
    private static final Slug WITHOUT_LETTERS = new Slug("episode");

    private EpisodeChanges() {}

    static Slug slug(String title) {
        return Slug.of(title, WITHOUT_LETTERS);
    }

    static void insert(Handle handle, Episode episode) {
        handle.createUpdate("""
                        insert into episode (id, series_id, number, slug, title, level, summary, created_at)
                        values (:id, :series, :number, :slug, :title, :level, :summary, :at)""")
                .bind("id", episode.id().value())
                .bind("series", episode.series().value())
                .bind("number", episode.number())
                .bind("slug", episode.slug().value())
                .bind("title", episode.title())
                .bind("level", episode.level().code())
                .bind("summary", episode.summary())
                .bind("at", episode.createdAt())
                .execute();
    }

    /** Until the transaction ends, nobody else changes this episode. */
    static boolean lock(Handle handle, EpisodeId id) {
        return handle.createQuery("select id from episode where id = :id for update")
                .bind("id", id.value())
                .mapTo(String.class)
                .findOne()
                .isPresent();
    }

    /** Until the transaction ends, nobody else changes or publishes an episode of this series. */
    static void lockAll(Handle handle, SeriesId series) {
        handle.createQuery("select id from episode where series_id = :series order by id for update")
                .bind("series", series.value())
                .mapTo(String.class)
                .list();
    }

    static void describe(Handle handle, EpisodeId id, EpisodeDocument document) {
        Optional<String> title = Optional.of(document.title().strip()).filter(text -> !text.isEmpty());
        title.ifPresent(text -> setTitle(handle, id, cut(text, LONGEST_TITLE)));
        handle.createUpdate("update episode set level = :level, summary = :summary where id = :id")
                .bind("id", id.value())
                .bind("level", document.level().code())
                .bind("summary", cut(document.summary().strip(), LONGEST_SUMMARY))
                .execute();
    }

    private static void setTitle(Handle handle, EpisodeId id, String title) {
        handle.createUpdate("""
                        update episode set title = :title,
                               slug = case when published_at is null then :slug else slug end
                        where id = :id""")
                .bind("id", id.value())
                .bind("title", title)
                .bind("slug", slug(title).value())
                .execute();
    }

    private static String cut(String text, int longest) {
        return text.substring(0, Math.min(text.length(), longest));
    }

    static boolean schedule(Handle handle, EpisodeId id, EpisodeState.Scheduled promise) {
        return handle.createUpdate("""
                                update episode
                                set scheduled_at = :at, scheduled_zone = :zone, scheduled_local = :local,
                                    promised_at = :made, promised_release = :first
                                where id = :id and published_at is null""")
                        .bind("id", id.value())
                        .bind("at", promise.at())
                        .bind("zone", promise.zone().getId())
                        .bind("local", promise.local().toString())
                        .bind("made", promise.madeAt())
                        .bind("first", promise.firstRelease())
                        .execute()
                == 1;
    }

    static boolean unschedule(Handle handle, EpisodeId id) {
        return handle.createUpdate("""
                                update episode
                                set scheduled_at = null, scheduled_zone = null, scheduled_local = null
                                where id = :id and published_at is null and scheduled_at is not null""").bind("id", id.value()).execute() == 1;
    }

    static boolean markPublished(Handle handle, EpisodeId id, Instant now) {
        return handle.createUpdate("update episode set published_at = :now where id = :id and published_at is null")
                        .bind("id", id.value())
                        .bind("now", now)
                        .execute()
                == 1;
    }

    static void setNumber(Handle handle, EpisodeId id, int number) {
        handle.createUpdate("update episode set number = :number where id = :id and published_at is null")
                .bind("id", id.value())
                .bind("number", number)
                .execute();
    }
}
