package groundbass.web.desk.publish;

import groundbass.form.FieldProblem;
import groundbass.web.view.FieldProblems;
import java.util.List;
import java.util.Set;

/** Brings what keeps a lesson from going out to this room: what is mended in another stands in its list, with the way there. */
final class PublishProblems {
    private static final String PREFLIGHT = "preflight";
    private static final Set<String> HERE = Set.of("local", "zone", "number", "note");

    private PublishProblems() {}

    static FieldProblems of(List<FieldProblem> problems) {
        return new FieldProblems(problems.stream()
                .map(problem -> HERE.contains(problem.field())
                        ? problem
                        : new FieldProblem(PREFLIGHT, problem.key(), problem.args()))
                .toList());
    }
}
