package groundbass.web.desk.editor;

import groundbass.form.FieldProblem;
import groundbass.web.desk.calendar.PreflightView;
import groundbass.web.view.FieldProblems;
import java.util.List;
import java.util.Set;

/**
 * Brings problems of a document to the fields of its page: ids there have no brackets, and every problem has a place. What
 * is mended on another page stands in the list before publishing, which leads there.
 */
final class EditorProblems {
    private static final String WHOLE_PAGE = "content";
    private static final String PREFLIGHT = "preflight";
    private static final Set<String> ELSEWHERE = Set.of("walkthrough", "address", "imprint");

    private EditorProblems() {}

    static FieldProblems of(List<FieldProblem> problems) {
        return new FieldProblems(problems.stream()
                .map(problem -> new FieldProblem(field(problem.field()), problem.key(), problem.args()))
                .toList());
    }

    private static String field(String name) {
        if (name.startsWith("facts.") || ELSEWHERE.contains(name)) {
            return PREFLIGHT;
        }
        return name.isEmpty() ? WHOLE_PAGE : PreflightView.spot(name);
    }
}
