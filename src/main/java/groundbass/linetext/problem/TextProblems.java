package groundbass.linetext.problem;

import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Span;
import groundbass.linetext.source.Token;
import groundbass.score.Bar;
import groundbass.score.Line;
import java.util.List;

/** What can be wrong with any line of a text. */
public final class TextProblems {
    private TextProblems() {}

    static Problem tooMany(Span span, int more) {
        return Problem.error(
                "too-many-problems",
                span,
                more + " more problems are not listed; only the first " + Limits.MOST_PROBLEMS
                        + " are kept. Mend these first.");
    }

    public static Problem lineTooLong(Span span, int length) {
        return Problem.error(
                "line-too-long",
                span,
                "this line has " + length + " characters, at most " + Limits.LONGEST_LINE
                        + " can be read; it is left out. Break it into several lines.");
    }

    public static Problem tooManyBars(Span span) {
        return Problem.error(
                "too-many-bars",
                span,
                "a line has at most " + Limits.MOST_BARS + " bars; this one and all after it are left out.");
    }

    public static Problem tooManyEvents(Span span) {
        return Problem.error(
                "too-many-events",
                span,
                "a line has at most " + Limits.MOST_EVENTS + " events; this count line and all after it are left out.");
    }

    public static Problem tooManyNotes(Span span) {
        return Problem.error(
                "too-many-notes",
                span,
                "a bar holds at most " + Bar.MOST_NOTES + " notes and a line " + Line.MOST_NOTES
                        + "; this one is left out.");
    }

    public static Problem tooManyDirections(Span span) {
        return Problem.error(
                "too-many-directions",
                span,
                "a bar holds at most " + Bar.MOST_DIRECTIONS
                        + " loudnesses and texts; those of this event are left out.");
    }

    public static Problem commentTooClose(Span span) {
        return Problem.error("comment-too-close", span, "a comment behind something else needs two spaces before it.")
                .suggesting("two spaces before #");
    }

    public static Problem semicolon(Span span) {
        return Problem.error("semicolon", span, "commas stand between events and between chords; this is read as one.")
                .suggesting(",");
    }

    public static Problem openQuote(Span span) {
        return Problem.error("quote-not-closed", span, "this text in quotes has no end; write \" after its last word.");
    }

    public static Problem unknownLine(Span span, String word) {
        return Problem.error(
                        "unknown-line",
                        span,
                        "a line cannot begin with '" + word + "'; expected a count (1, 2&), a bar, or one of: "
                                + String.join(" ", Keyword.WORDS) + ".")
                .suggesting(Nearest.to(word, Keyword.WORDS));
    }

    public static Problem leftOver(Span span, String text) {
        return Problem.error("left-over", span, "'" + text + "' stands where this line should end; take it out.");
    }

    public static Problem unknownWord(String code, String what, Token found, List<String> known) {
        return Problem.error(
                        code,
                        found.span(),
                        "'" + found.text() + "' is no " + what + "; expected one of: " + String.join(" ", known) + ".")
                .suggesting(Nearest.to(found.text(), known));
    }

    static Problem expected(String code, Span span, String what) {
        return Problem.error(code, span, what);
    }
}
