package groundbass.linetext.problem;

import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Token;
import groundbass.remark.Remark;
import groundbass.remark.Retyping;
import groundbass.remark.Span;
import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.text.Message;
import java.util.List;

/** What can be wrong with any line of a text. */
public final class TextProblems {
    private static final Retyping TWO_SPACES = new Retyping("  #", Message.of("linetext.two-spaces"));

    private TextProblems() {}

    static Remark tooMany(Span span, int more) {
        return Mistake.TOO_MANY_PROBLEMS.at(span, more, Limits.MOST_PROBLEMS);
    }

    public static Remark lineTooLong(Span span, int length) {
        return Mistake.LINE_TOO_LONG.at(span, length, Limits.LONGEST_LINE);
    }

    public static Remark tooManyBars(Span span) {
        return Mistake.TOO_MANY_BARS.at(span, Limits.MOST_BARS);
    }

    public static Remark tooManyEvents(Span span) {
        return Mistake.TOO_MANY_EVENTS.at(span, Limits.MOST_EVENTS);
    }

    public static Remark tooManyNotes(Span span) {
        return Mistake.TOO_MANY_NOTES.at(span, Bar.MOST_NOTES, Line.MOST_NOTES);
    }

    public static Remark tooManyDirections(Span span) {
        return Mistake.TOO_MANY_DIRECTIONS.at(span, Bar.MOST_DIRECTIONS);
    }

    public static Remark commentTooClose(Span span) {
        return Mistake.COMMENT_TOO_CLOSE.at(span).withSuggestions(List.of(TWO_SPACES));
    }

    public static Remark semicolon(Span span) {
        return Mistake.SEMICOLON.at(span).suggesting(",");
    }

    public static Remark openQuote(Span span) {
        return Mistake.QUOTE_NOT_CLOSED.at(span);
    }

    public static Remark unknownLine(Span span, String word) {
        return Mistake.UNKNOWN_LINE
                .at(span, word, String.join(" ", Keyword.WORDS))
                .suggesting(Nearest.to(word, Keyword.WORDS));
    }

    public static Remark leftOver(Span span, String text) {
        return Mistake.LEFT_OVER.at(span, text);
    }

    public static Remark unknownMode(Token found, List<String> known) {
        return unknownWord(Mistake.UNKNOWN_MODE, found, known);
    }

    public static Remark unknownStyle(Token found, List<String> known) {
        return unknownWord(Mistake.UNKNOWN_STYLE, found, known);
    }

    private static Remark unknownWord(Mistake mistake, Token found, List<String> known) {
        return mistake.at(found.span(), found.text(), String.join(" ", known))
                .suggesting(Nearest.to(found.text(), known));
    }
}
