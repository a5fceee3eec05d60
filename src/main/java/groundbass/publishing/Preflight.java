package groundbass.publishing;

import groundbass.catalog.EpisodeDocument;
import groundbass.catalog.FieldProblem;
import java.util.ArrayList;
import java.util.List;

/** What must be right before anything goes out, beyond what a revision asks for. */
public final class Preflight {
    private Preflight() {}

    /** Fields are named as in {@link groundbass.catalog.DocumentCheck}. */
    public static List<FieldProblem> problems(EpisodeDocument document) {
        var problems = new ArrayList<FieldProblem>();
        if (document.rights().statement().isBlank()) {
            problems.add(FieldProblem.of("rights.statement", "publishing.problem.rights"));
        }
        return problems;
    }
}
