package groundbass.linetext.source;

import groundbass.remark.Span;

/** The smallest readable piece of a line: a word, a text in quotes (without them), or one of the marks , + * =. */
public record Token(Kind kind, String text, Span span) {
    public enum Kind {
        WORD,
        QUOTED,
        MARK
    }

    public boolean isWord(String word) {
        return kind == Kind.WORD && text.equals(word);
    }

    public boolean isMark(String mark) {
        return kind == Kind.MARK && text.equals(mark);
    }
}
