package groundbass.publishing;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRows;
import groundbass.form.Outcome;
import org.jdbi.v3.core.Jdbi;

/** What educators say in letters about their series, as rows. */
public final class NewsTexts {
    private final Jdbi jdbi;
    private final Audit audit;

    public NewsTexts(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public NewsText of(SeriesId series) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select subject, opening from news_text where series_id = :series")
                        .bind("series", series)
                        .mapTo(NewsText.class)
                        .findOne()
                        .orElse(NewsText.USUAL));
    }

    /** Saves what an educator typed for a series of theirs, where nothing is wrong with it. */
    public Outcome<NewsText> save(EducatorId who, SeriesId series, NewsText typed) {
        var problems = typed.problems();
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var text = typed.stripped();
        jdbi.useTransaction(handle -> {
            var insert = handle.createUpdate("""
                            insert into news_text (series_id, subject, opening) values (:series, :subject, :opening)""").bindMethods(text);
            SeriesRows.replace(handle, series, "news_text", insert);
            audit.append(handle, who, AuditWord.NEWS_CHANGED, series.value());
        });
        return Outcome.done(text);
    }
}
