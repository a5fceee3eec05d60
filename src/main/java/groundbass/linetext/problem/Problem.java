package groundbass.linetext.problem;

import groundbass.linetext.source.Source;
import groundbass.linetext.source.Span;
import java.util.Optional;

/**
 * One thing that is wrong with a text.
 *
 * @param code stable and short, for programs: {@code fret-off-neck}
 * @param message what was found, what was expected and what to do, as one or two sentences
 * @param suggestion what was probably meant, such as {@code 5 or 8}
 */
public record Problem(Severity severity, String code, Span span, String message, Optional<String> suggestion) {
    private static final String INDENT = "    ";
    private static final int WIDEST = 120;

    static Problem error(String code, Span span, String message) {
        return new Problem(Severity.ERROR, code, span, message, Optional.empty());
    }

    public Problem suggesting(String text) {
        return suggesting(Optional.of(text));
    }

    public Problem suggesting(Optional<String> text) {
        return new Problem(severity, code, span, message, text);
    }

    /** The message, with the question after it where there is a suggestion. */
    public String sentence() {
        return message + suggestion.map(text -> " Did you mean " + text + "?").orElse("");
    }

    /** {@code name:line:column: error: ...}, without the source line. */
    public String headline(String name) {
        return (name.isEmpty() ? "" : name + ":") + span.line() + ":" + span.column() + ": " + severity + ": "
                + sentence();
    }

    /** The headline, the source line and carets below the span, without a line end at the end. */
    public String in(Source source) {
        String line = source.line(span.line());
        int from = Math.min(span.column() - 1, line.length());
        int cut = from > WIDEST ? from - WIDEST / 2 : 0;
        String shown = line.substring(cut, Math.min(line.length(), cut + 2 * WIDEST));
        int room = Math.max(1, shown.length() - (from - cut));
        String carets = "^".repeat(Math.min(Math.max(1, span.length()), room));
        return headline(source.name()) + "\n" + INDENT + printable(shown) + "\n" + INDENT + " ".repeat(from - cut)
                + carets;
    }

    /** One column for each character, so that the carets stand where they should. */
    private static String printable(String text) {
        return text.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
