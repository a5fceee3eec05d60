package groundbass.linetext.read;

import groundbass.linetext.problem.Problems;
import groundbass.linetext.problem.TextProblems;
import groundbass.linetext.source.Lookalikes;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.remark.Span;
import java.util.ArrayList;
import java.util.List;

/** Walks over the characters of one line, keeps the columns, and cuts it into tokens. */
public final class Scanner {
    private final int line;
    private final String raw;
    private final String plain;
    private final Problems problems;
    private final int start;
    private int at;
    private int end;

    public Scanner(int line, String raw, Problems problems) {
        this.line = line;
        this.raw = raw;
        this.plain = Lookalikes.plain(raw);
        this.problems = problems;
        skipSpaces();
        this.start = at;
        this.end = at;
    }

    /** Whether nothing stands here but spaces, or a comment from the start of the line. */
    public boolean isBlank() {
        return atEnd() || plain.charAt(at) == '#';
    }

    public boolean startsWithDigit() {
        return Character.isDigit(plain.charAt(at));
    }

    /** The next word and nothing after it. */
    public Token word() {
        int from = at;
        while (!atEnd() && plain.charAt(at) != ' ') {
            at++;
        }
        var word = token(Token.Kind.WORD, from, at);
        end = at;
        skipSpaces();
        return word;
    }

    /** All that is left, as it was typed, without outer spaces. */
    public Token freeText() {
        String text = raw.substring(at).strip();
        int from = raw.indexOf(text, at);
        end = Math.max(end, from + text.length());
        return new Token(Token.Kind.QUOTED, text, new Span(line, from + 1, text.length()));
    }

    /** What is left of the line, cut at spaces, at these marks and before a comment. */
    Tokens tokens(String marks) {
        var tokens = new ArrayList<Token>();
        while (!atEnd() && !isComment()) {
            tokens.add(next(marks));
            end = at;
            skipSpaces();
        }
        return new Tokens(List.copyOf(tokens), whole());
    }

    /** What was read of the line so far, without a comment. */
    Span whole() {
        return new Span(line, start + 1, end - start);
    }

    /** No word begins with the sign of a comment, so one that stands too close is still meant as one. */
    private boolean isComment() {
        if (plain.charAt(at) != '#') {
            return false;
        }
        if (!isAfterTwoSpaces()) {
            problems.add(TextProblems.commentTooClose(new Span(line, at + 1, 1)));
        }
        return true;
    }

    private Token next(String marks) {
        if (startsQuote()) {
            return quoted();
        }
        int from = at++;
        if (isSemicolon(from, marks)) {
            problems.add(TextProblems.semicolon(new Span(line, from + 1, 1)));
            return new Token(Token.Kind.MARK, ",", new Span(line, from + 1, 1));
        }
        if (marks.indexOf(plain.charAt(from)) >= 0) {
            return token(Token.Kind.MARK, from, at);
        }
        while (!atEnd() && !endsWord(marks)) {
            at++;
        }
        return token(Token.Kind.WORD, from, at);
    }

    private boolean endsWord(String marks) {
        char c = plain.charAt(at);
        return c == ' ' || marks.indexOf(c) >= 0 || isSemicolon(at, marks) || startsQuote();
    }

    private boolean isSemicolon(int index, String marks) {
        return plain.charAt(index) == ';' && marks.indexOf(',') >= 0;
    }

    private boolean startsQuote() {
        return !closing(raw.charAt(at)).isEmpty();
    }

    /** A straight quote ends only at a straight one; a curly one at any that closes. */
    private Token quoted() {
        int from = at;
        String closing = closing(raw.charAt(from));
        at++;
        while (!atEnd() && closing.indexOf(raw.charAt(at)) < 0) {
            at++;
        }
        String text = raw.substring(from + 1, at);
        if (atEnd()) {
            problems.add(TextProblems.openQuote(new Span(line, from + 1, at - from)));
        } else {
            at++;
        }
        return new Token(Token.Kind.QUOTED, text, new Span(line, from + 1, at - from));
    }

    /** Which characters end a text in quotes that this one begins; empty where it begins none. */
    private static String closing(char c) {
        return switch (c) {
            case '"' -> "\"";
            case '\u201C', '\u201D', '\u201E' -> "\"\u201C\u201D";
            case '\u00AB', '\u00BB' -> "\u00AB\u00BB";
            default -> "";
        };
    }

    private Token token(Token.Kind kind, int from, int to) {
        return new Token(kind, plain.substring(from, to), new Span(line, from + 1, to - from));
    }

    private boolean isAfterTwoSpaces() {
        boolean tab = at > 0 && raw.charAt(at - 1) == '\t';
        return at == 0 || tab || (at > 1 && plain.charAt(at - 1) == ' ' && plain.charAt(at - 2) == ' ');
    }

    private void skipSpaces() {
        while (!atEnd() && plain.charAt(at) == ' ') {
            at++;
        }
    }

    private boolean atEnd() {
        return at >= plain.length();
    }
}
