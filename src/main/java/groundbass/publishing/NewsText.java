package groundbass.publishing;

import groundbass.catalog.FieldChecks;
import groundbass.form.FieldProblem;
import java.util.ArrayList;
import java.util.List;

/**
 * How an educator begins letters about the lessons of a series. What is blank says the usual in the language of each
 * reader; {@code [title]}, {@code [series]} and {@code [number]} stand for those of the lesson.
 *
 * @param subject one line
 * @param opening the first sentence
 */
public record NewsText(String subject, String opening) {
    public static final NewsText USUAL = new NewsText("", "");

    private static final int LONGEST_SUBJECT = 200;
    private static final int LONGEST_OPENING = 1000;

    List<FieldProblem> problems() {
        var problems = new ArrayList<FieldProblem>();
        if (!subject.isBlank()) {
            problems.addAll(FieldChecks.line("subject", subject, LONGEST_SUBJECT));
        }
        problems.addAll(FieldChecks.text("opening", opening, LONGEST_OPENING));
        return problems;
    }

    NewsText stripped() {
        return new NewsText(subject.strip(), opening.strip());
    }
}
