package groundbass.web.desk.editor;

import groundbass.form.FieldProblem;
import groundbass.web.view.Problems;
import java.util.List;

/** Brings problems of a document to the fields of its page: ids there have no brackets, and every problem has a place. */
final class EditorProblems {
    private static final String WHOLE_PAGE = "content";

    private EditorProblems() {}

    static Problems of(List<FieldProblem> problems) {
        return new Problems(problems.stream()
                .map(problem -> new FieldProblem(field(problem.field()), problem.key(), problem.args()))
                .toList());
    }

    private static String field(String name) {
        return name.isEmpty() ? WHOLE_PAGE : name.replaceFirst("^exercises\\[(\\d+)]$", "exercises-$1");
    }
}
