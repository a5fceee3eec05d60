package groundbass.publishing;

import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.linetext.problem.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What must be right before anything goes out, beyond what a revision asks for. */
public final class Preflight {
    private Preflight() {}

    /** Fields are named as in {@link groundbass.catalog.episode.DocumentCheck}. */
    public static List<FieldProblem> problems(EpisodeDocument document) {
        var problems = new ArrayList<FieldProblem>();
        line("mainLine", document.mainLine().text()).forEach(problems::add);
        for (int i = 0; i < document.exercises().size(); i++) {
            line("exercises[" + i + "]", document.exercises().get(i).text()).forEach(problems::add);
        }
        groove(document.groove().text()).forEach(problems::add);
        if (document.rights().statement().isBlank()) {
            problems.add(FieldProblem.of("rights.statement", "publishing.problem.rights"));
        }
        if (document.rights().clearance() == Clearance.WAITING) {
            problems.add(FieldProblem.of("rights.clearance", "publishing.problem.clearance"));
        }
        return problems;
    }

    /** An empty text is the revision's to complain of. */
    private static Stream<FieldProblem> line(String field, String text) {
        return text.isBlank()
                ? Stream.empty()
                : LineText.read(text).problems().stream()
                        .filter(problem -> problem.severity() == Severity.ERROR)
                        .map(problem -> FieldProblem.of(
                                field,
                                "publishing.problem.line",
                                problem.span().line(),
                                problem.span().column(),
                                problem.sentence()));
    }

    private static Stream<FieldProblem> groove(String text) {
        return text.isBlank()
                ? Stream.empty()
                : GrooveText.read(text).problems().stream()
                        .map(problem -> FieldProblem.of(
                                "groove",
                                "publishing.problem.line",
                                problem.line(),
                                problem.column(),
                                "found " + problem.found() + ", expected " + problem.expected()));
    }
}
