package groundbass.score;

/**
 * Pairs of eighths or sixteenths played long and short.
 *
 * @param unit the written length of each of the pair: 1/8 or 1/16
 * @param first the share of the first of the pair, at least that of the second
 */
public record Swing(Fraction unit, int first, int second) {
    public static final Fraction EIGHTHS = Fraction.of(1, 8);
    public static final Fraction SIXTEENTHS = Fraction.of(1, 16);
    private static final int MOST = 9;

    public Swing {
        if (!unit.equals(EIGHTHS) && !unit.equals(SIXTEENTHS)) {
            throw new IllegalArgumentException("swing needs eighths or sixteenths: " + unit);
        }
        if (!isRatio(first, second)) {
            throw new IllegalArgumentException(
                    "swing ratio must run from 1:1 to " + MOST + ":1: " + first + ":" + second);
        }
    }

    public static boolean isRatio(int first, int second) {
        return second >= 1 && first >= second && first <= MOST;
    }

    /** Where the second of a pair sounds, from the first. */
    public Fraction secondOnset() {
        return unit.times(2).times(Fraction.of(first, first + (long) second));
    }

    @Override
    public String toString() {
        return "swing " + unit.denominator() + "ths " + first + ":" + second;
    }
}
