package groundbass.linetext;

/** The smallest readable piece of a line: a word, a text in quotes (without them), or one of the marks , + * =. */
record Token(Kind kind, String text, Span span) {
    enum Kind {
        WORD,
        QUOTED,
        MARK
    }

    boolean isWord(String word) {
        return kind == Kind.WORD && text.equals(word);
    }

    boolean isMark(String mark) {
        return kind == Kind.MARK && text.equals(mark);
    }
}
