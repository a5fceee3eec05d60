package groundbass.catalog.series;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import org.jdbi.v3.core.Jdbi;

/** What students see of the lessons of each series that wait for their hour, as rows. */
public final class Outlooks {
    private final Jdbi jdbi;
    private final Audit audit;

    public Outlooks(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public Outlook of(SeriesId series) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select shows from series_outlook where series_id = :series")
                        .bind("series", series)
                        .mapTo(String.class)
                        .findOne()
                        .map(Outlook::parse)
                        .orElse(Outlook.NOTHING));
    }

    /** Saves what an educator chose for a series of theirs. */
    public void save(EducatorId who, SeriesId series, Outlook outlook) {
        jdbi.useTransaction(handle -> {
            var insert = handle.createUpdate("insert into series_outlook (series_id, shows) values (:series, :shows)")
                    .bind("shows", outlook.word());
            SeriesRows.replace(handle, series, "series_outlook", insert);
            audit.append(handle, who, AuditWord.OUTLOOK_CHANGED, series.value());
        });
    }
}
