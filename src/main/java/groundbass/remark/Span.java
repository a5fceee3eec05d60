package groundbass.remark;

import java.util.Comparator;

/**
 * A stretch of one line of text, as people count: line and column from 1, in UTF-16 units. A length of 0 is a spot
 * between two characters.
 */
public record Span(int line, int column, int length) implements Comparable<Span> {
    private static final Comparator<Span> ORDER =
            Comparator.comparingInt(Span::line).thenComparingInt(Span::column).thenComparingInt(Span::length);

    public Span {
        if (line < 1 || column < 1 || length < 0) {
            throw new IllegalArgumentException("no such span: " + line + ":" + column + ", " + length);
        }
    }

    /** From the start of this span to the end of one that stands after it on the same line. */
    public Span to(Span last) {
        return new Span(line, column, Math.max(length, last.column + last.length - column));
    }

    @Override
    public int compareTo(Span that) {
        return ORDER.compare(this, that);
    }
}
