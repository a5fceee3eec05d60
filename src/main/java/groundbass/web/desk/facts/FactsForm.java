package groundbass.web.desk.facts;

import groundbass.catalog.episode.Episode;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.RoomForm;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * The facts of a lesson as typed.
 *
 * @param level empty where the form names none that there is
 * @param clearance whether the music may be published; empty where the form names nothing of the kind
 */
record FactsForm(
        String title,
        Optional<Level> level,
        String summary,
        String language,
        LessonFacts facts,
        Rights rights,
        Optional<Clearance> clearance)
        implements RoomForm {
    static FactsForm read(Context ctx) {
        return new FactsForm(
                FormParameters.text(ctx, "title"),
                Level.parse(FormParameters.text(ctx, "level")),
                FormParameters.text(ctx, "summary"),
                FormParameters.text(ctx, "settings.language"),
                new LessonFacts(
                        FormParameters.text(ctx, "facts.video").strip(),
                        FormParameters.text(ctx, "facts.gear").strip(),
                        courses(ctx),
                        ""),
                new Rights(
                        FormParameters.text(ctx, "rights.composer"),
                        FormParameters.text(ctx, "rights.credit"),
                        FormParameters.text(ctx, "rights.statement"),
                        Clearance.OPEN,
                        licence(ctx)),
                Clearance.parse(FormParameters.text(ctx, "rights.clearance")));
    }

    /** What was typed of a permission, which stays also while another clearance is chosen. */
    private static Licence licence(Context ctx) {
        return new Licence(
                FormParameters.text(ctx, "rights.licence.reference").strip(),
                FormParameters.text(ctx, "rights.licence.from").strip(),
                FormParameters.text(ctx, "rights.licence.until").strip());
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

    @Override
    public UnaryOperator<EpisodeDocument> change(Episode episode) {
        return this::in;
    }

    private EpisodeDocument in(EpisodeDocument before) {
        var settings = before.settings();
        return before.edit()
                .title(title)
                .level(level.orElse(before.level()))
                .summary(summary)
                .facts(facts.withChapters(before.facts().chapters())) // those have a room of their own
                .rights(new Rights(
                        rights.composer(),
                        rights.credit(),
                        rights.statement(),
                        clearance.orElse(before.rights().clearance()),
                        rights.licence()))
                .settings(new DocumentSettings(language, settings.tempos(), settings.rounds(), settings.naming()))
                .done();
    }
}
