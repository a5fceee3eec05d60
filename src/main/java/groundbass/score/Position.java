package groundbass.score;

import java.util.Comparator;

/** A moment of the written line: a bar by its number, and a time from the bar's first count. */
public record Position(int bar, Fraction at) implements Comparable<Position> {
    private static final Comparator<Position> ORDER =
            Comparator.comparingInt(Position::bar).thenComparing(Position::at);

    @Override
    public int compareTo(Position that) {
        return ORDER.compare(this, that);
    }
}
