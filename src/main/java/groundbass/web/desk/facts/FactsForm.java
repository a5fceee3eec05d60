package groundbass.web.desk.facts;

import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Rights;
import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The facts of a lesson as typed.
 *
 * @param base the version of the draft that the typing began from
 */
public record FactsForm(int base, Level level, LessonFacts facts, Rights rights) {
    static FactsForm of(int base, EpisodeDocument document) {
        return new FactsForm(base, document.level(), document.facts(), document.rights());
    }

    static FactsForm read(Context ctx) {
        return new FactsForm(
                FormParameters.number(ctx, "base", 0),
                Level.parse(FormParameters.text(ctx, "level")).orElse(Level.BEGINNER),
                new LessonFacts(
                        FormParameters.text(ctx, "facts.video").strip(),
                        FormParameters.text(ctx, "facts.gear").strip(),
                        courses(ctx),
                        ""),
                new Rights(
                        FormParameters.text(ctx, "rights.composer"),
                        FormParameters.text(ctx, "rights.credit"),
                        FormParameters.text(ctx, "rights.statement"),
                        Clearance.parse(FormParameters.text(ctx, "rights.clearance"))
                                .orElse(Clearance.OPEN)));
    }

    /** A row with neither title nor address was left free. */
    private static List<CoursePointer> courses(Context ctx) {
        var titles = ctx.formParams("courseTitle");
        var addresses = ctx.formParams("courseAddress");
        return IntStream.range(0, Math.min(titles.size(), addresses.size()))
                .mapToObj(i -> new CoursePointer(
                        titles.get(i).strip(), addresses.get(i).strip()))
                .filter(course -> !course.title().isEmpty() || !course.address().isEmpty())
                .toList();
    }

    EpisodeDocument in(EpisodeDocument document) {
        var kept = facts.withChapters(document.facts().chapters()); // those have a page of their own
        return document.edit().level(level).facts(kept).rights(rights).done();
    }
}
