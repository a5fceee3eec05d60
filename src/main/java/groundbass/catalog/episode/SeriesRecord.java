package groundbass.catalog.episode;

import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.series.SeriesId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Jdbi;

/**
 * What was done with one series and its lessons, by whomever: the part of the record that its owner may read. An entry
 * belongs to it that begins with an id of the series, of a lesson or of a release of one; of what was sent for a lesson,
 * one that ends with the lesson's. Of a lesson that is deleted for good nothing is there any more.
 */
public final class SeriesRecord {
    private static final String LESSONS = "select id from episode where series_id = :series";

    /** What is told of a file that was sent ends with its lesson. */
    private static final List<AuditWord> SENT = List.of(
            AuditWord.UPLOAD_CREATED,
            AuditWord.UPLOAD_REMOVED,
            AuditWord.UPLOAD_RESTORED,
            AuditWord.UPLOAD_PURGED,
            AuditWord.PICTURE_CREATED,
            AuditWord.PICTURE_REMOVED,
            AuditWord.PICTURE_RESTORED,
            AuditWord.PICTURE_PURGED);

    private final Jdbi jdbi;

    public SeriesRecord(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** A part of it, newest first. */
    public List<AuditEntry> of(SeriesId series, int skipped, int count) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select at, who, what, detail, program, request from audit
                        where substring(detail from 1 for 16) = :series
                            or substring(detail from 1 for 16) in (<lessons>)
                            or substring(detail from 1 for 16) in (
                                select release.id from release where release.episode_id in (<lessons>))
                            or (what in (<sent>) and right(detail, 16) in (<lessons>))
                        order by id desc limit :count offset :skipped""")
                .define("lessons", LESSONS)
                .bindList("sent", SENT)
                .bind("series", series)
                .bind("count", count)
                .bind("skipped", skipped)
                .mapTo(AuditEntry.class)
                .list());
    }

    private record Named(String id, String title) {}

    /** The titles of lessons of a series, under their ids and those of their releases, as far as they are among these. */
    public Map<String, String> titles(SeriesId series, Collection<String> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return jdbi.withHandle(handle ->
                handle
                        .createQuery("""
                        select id, title from episode where series_id = :series and id in (<ids>)
                        union all
                        select release.id, episode.title from release join episode on episode.id = release.episode_id
                        where episode.series_id = :series and release.id in (<ids>)""")
                        .bind("series", series)
                        .bindList("ids", List.copyOf(ids))
                        .mapTo(Named.class)
                        .stream()
                        .collect(Collectors.toMap(Named::id, Named::title)));
    }
}
