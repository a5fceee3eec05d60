package groundbass.catalog.episode;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRows;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.form.Outcome;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Jdbi;

/** What new lessons of a series begin with: a document that has neither title nor lines. */
public final class Beginnings {
    /** What only a lesson can say. */
    private static final Set<String> OF_A_LESSON = Set.of("title", "mainLine");

    private final Jdbi jdbi;
    private final Audit audit;

    public Beginnings(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public Optional<EpisodeDocument> of(SeriesId series) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select document from series_beginning where series_id = :series")
                        .bind("series", series)
                        .mapTo(EpisodeDocument.class)
                        .findOne());
    }

    /** What a new lesson of this series says before anything is written in it. */
    public EpisodeDocument begun(SeriesId series, String title) {
        return of(series)
                .map(kept -> kept.edit().title(title).done())
                .orElseGet(() -> EpisodeDocument.titled(title, Level.BEGINNER));
    }

    /** Saves it for a series of theirs, where nothing is wrong with it. Lessons that are begun stay as they are. */
    public Outcome<EpisodeDocument> save(EducatorId who, SeriesId series, EpisodeDocument document) {
        var problems = DocumentCheck.problems(document).stream()
                .filter(problem -> !OF_A_LESSON.contains(problem.field()))
                .toList();
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        jdbi.useTransaction(handle -> {
            var insert = handle.createUpdate(
                            "insert into series_beginning (series_id, document) values (:series, :document)")
                    .bind("document", document);
            SeriesRows.replace(handle, series, "series_beginning", insert);
            audit.append(handle, who, AuditWord.BEGINNING_CHANGED, series.value());
        });
        return Outcome.done(document);
    }
}
