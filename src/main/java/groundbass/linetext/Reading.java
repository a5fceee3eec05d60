package groundbass.linetext;

import groundbass.linetext.assemble.Origins;
import groundbass.remark.Remark;
import groundbass.remark.Severity;
import groundbass.score.Line;
import java.util.List;

/**
 * What came of reading a text: a line that can always be rendered, what was wrong, and where everything stands.
 *
 * @param problems in the order of the text
 */
public record Reading(Line line, List<Remark> problems, Origins origins) {
    public Reading {
        problems = List.copyOf(problems);
    }

    public boolean hasErrors() {
        return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
    }
}
