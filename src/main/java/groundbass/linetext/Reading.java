package groundbass.linetext;

import groundbass.linetext.assemble.Origins;
import groundbass.linetext.problem.Problem;
import groundbass.linetext.problem.Severity;
import groundbass.score.Line;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What came of reading a text: a line that can always be rendered, what was wrong, and where everything stands.
 *
 * @param problems in the order of the text
 */
public record Reading(Line line, List<Problem> problems, Origins origins) {
    public Reading {
        problems = List.copyOf(problems);
    }

    public boolean hasErrors() {
        return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
    }

    /** All problems with their source lines, one after the other; empty where there are none. */
    public String report() {
        return problems.stream()
                .map(problem -> problem.in(origins.source()) + "\n")
                .collect(Collectors.joining());
    }
}
