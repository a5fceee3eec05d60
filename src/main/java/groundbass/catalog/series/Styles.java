package groundbass.catalog.series;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.Update;

/** How each series has its sheets, as rows; what has no row is as usual. */
public final class Styles {
    private final Jdbi jdbi;
    private final Audit audit;

    public Styles(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public HouseStyle of(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select letters, simile, rests_together, paper, counts, every_bar
                          from series_style where series_id = :series""")
                .bind("series", series)
                .mapTo(Row.class)
                .findOne()
                .map(Row::style)
                .orElse(HouseStyle.USUAL));
    }

    private record Row(
            String letters, boolean simile, boolean restsTogether, String paper, String counts, boolean everyBar) {
        HouseStyle style() {
            return new HouseStyle(
                    SheetLetters.parse(letters),
                    new SheetAbbreviations(simile, restsTogether),
                    SheetPaper.parse(paper),
                    new SheetAids(CountsRow.parse(counts), everyBar));
        }
    }

    public void save(EducatorId who, SeriesId series, HouseStyle style) {
        jdbi.useTransaction(handle -> {
            SeriesRows.replace(handle, series, "series_style", insert(handle, style));
            audit.append(handle, who, AuditWord.LETTERS_CHANGED, series.value());
        });
    }

    private static Update insert(Handle handle, HouseStyle style) {
        return handle.createUpdate("""
                        insert into series_style
                               (series_id, letters, simile, rests_together, paper, counts, every_bar)
                        values (:series, :letters, :simile, :restsTogether, :paper, :counts, :everyBar)""")
                .bind("letters", style.letters().toString())
                .bind("simile", style.abbreviations().simile())
                .bind("restsTogether", style.abbreviations().restsTogether())
                .bind("paper", style.paper().toString())
                .bind("counts", style.aids().counts().code())
                .bind("everyBar", style.aids().everyBar());
    }
}
