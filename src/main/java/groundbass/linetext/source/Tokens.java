package groundbass.linetext.source;

import groundbass.remark.Span;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** The tokens of one line, read from left to right. */
public final class Tokens {
    private final List<Token> tokens;
    private final Span whole;
    private int at;

    public Tokens(List<Token> tokens, Span whole) {
        this.tokens = tokens;
        this.whole = whole;
    }

    public boolean atEnd() {
        return at >= tokens.size();
    }

    /** The next token is taken where it is there and fits. */
    public Optional<Token> take(Predicate<Token> fits) {
        if (atEnd() || !fits.test(tokens.get(at))) {
            return Optional.empty();
        }
        return Optional.of(tokens.get(at++));
    }

    public Optional<Token> take() {
        return take(token -> true);
    }

    public boolean takeWord(String word) {
        return take(token -> token.isWord(word)).isPresent();
    }

    public boolean takeMark(String mark) {
        return take(token -> token.isMark(mark)).isPresent();
    }

    public boolean sees(Predicate<Token> fits) {
        return !atEnd() && fits.test(tokens.get(at));
    }

    public boolean seesMark(String mark) {
        return sees(token -> token.isMark(mark));
    }

    /** The token that was taken last, or the whole line where none was. */
    public Span last() {
        return at == 0 ? whole : tokens.get(at - 1).span();
    }

    /** Where the next token stands, or the spot behind the last one. */
    public Span here() {
        if (!atEnd()) {
            return tokens.get(at).span();
        }
        var last = tokens.isEmpty() ? whole : tokens.get(tokens.size() - 1).span();
        return new Span(last.line(), last.column() + last.length(), 0);
    }

    /** The whole line. */
    public Span whole() {
        return whole;
    }
}
