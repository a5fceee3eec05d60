package groundbass.catalog.series;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.ZoneNames;
import groundbass.form.FieldProblem;
import groundbass.identity.Slug;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A series as typed.
 *
 * @param slug blank to have it made from the title
 */
public record SeriesForm(String title, String slug, String summary, String zone) {
    public SeriesForm {
        Objects.requireNonNull(title);
        Objects.requireNonNull(slug);
        Objects.requireNonNull(summary);
        Objects.requireNonNull(zone);
    }

    /** The form that shows a series as it is. */
    public static SeriesForm of(Series series) {
        return new SeriesForm(
                series.title(),
                series.slug().value(),
                series.summary(),
                series.zone().getId());
    }

    /** What is wrong, whatever else there is. */
    public List<FieldProblem> problems() {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.line("title", title, 200));
        if (!slug.isBlank() && Slug.parse(slug.strip()).isEmpty()) {
            problems.add(FieldProblem.of("slug", "catalog.problem.slug", slug));
        }
        problems.addAll(FieldChecks.text("summary", summary, 2000));
        if (ZoneNames.read(zone).isEmpty()) {
            problems.add(FieldProblem.of("zone", "catalog.problem.zone", zone));
        }
        return problems;
    }
}
