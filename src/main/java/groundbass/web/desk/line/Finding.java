package groundbass.web.desk.line;

import groundbass.linetext.problem.Problem;
import groundbass.linetext.problem.Severity;
import groundbass.linetext.source.Source;

/**
 * Something found in a text, as it stands beside it.
 *
 * @param line from 1
 * @param column from 1
 * @param length how many characters it is about
 * @param shown the line of the text with carets below what is meant; may be empty
 */
public record Finding(int line, int column, int length, boolean error, String sentence, String shown) {
    private static final String INDENT = "(?m)^ {4}";

    static Finding of(Problem problem, Source source) {
        var span = problem.span();
        String headline = problem.headline(source.name());
        String shown = problem.in(source).substring(headline.length()).strip().isEmpty()
                ? ""
                : problem.in(source).substring(headline.length() + 1).replaceAll(INDENT, "");
        boolean error = problem.severity() == Severity.ERROR;
        return new Finding(span.line(), span.column(), span.length(), error, problem.sentence(), shown);
    }

    public static Finding of(groundbass.groove.Problem problem) {
        String sentence = "Found " + problem.found() + ", expected " + problem.expected() + ".";
        return new Finding(problem.line(), problem.column(), 1, true, sentence, "");
    }
}
