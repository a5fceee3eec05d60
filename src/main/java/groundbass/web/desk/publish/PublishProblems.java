package groundbass.web.desk.publish;

import groundbass.form.FieldProblem;
import groundbass.publishing.Seen;
import groundbass.web.view.FieldProblems;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Set;

/** Brings what keeps a lesson from going out to this room: what is mended in another stands in its list, with the way there. */
final class PublishProblems {
    private static final String PREFLIGHT = "preflight";

    private static final Set<String> HERE = Set.of("local", "zone", "number", "note", Seen.STANDING);

    private PublishProblems() {}

    /** Two windows that disagree, or a window and the hour, are a conflict (RFC 9110 section 15.5.10). */
    static HttpStatus status(List<FieldProblem> problems) {
        return Seen.isOtherwise(problems) ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT;
    }

    static FieldProblems of(List<FieldProblem> problems) {
        return new FieldProblems(problems.stream()
                .map(problem -> HERE.contains(problem.field())
                        ? problem
                        : new FieldProblem(PREFLIGHT, problem.key(), problem.args()))
                .toList());
    }
}
