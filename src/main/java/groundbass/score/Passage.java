package groundbass.score;

/** A half-open stretch of the written line: what loops, lights up, is quoted and is told. */
public record Passage(Position from, Position to) {
    public Passage {
        if (from.compareTo(to) >= 0) {
            throw new IllegalArgumentException("a passage runs forward: " + from + " to " + to);
        }
    }

    /** A whole bar. */
    public static Passage bar(int number) {
        return new Passage(new Position(number, Fraction.ZERO), new Position(number + 1, Fraction.ZERO));
    }

    public boolean contains(Position position) {
        return from.compareTo(position) <= 0 && position.compareTo(to) < 0;
    }

    /** Whether any moment lies in both. */
    public boolean overlaps(Passage other) {
        return from.compareTo(other.to) < 0 && other.from.compareTo(to) < 0;
    }
}
