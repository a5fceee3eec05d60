package groundbass.score;

/**
 * The common division of one bar's times: how many equal parts of a whole note reach every one of them. It is bounded,
 * so that exact time never overflows and every bar can be said in shares. The bound leaves room for 64ths beside
 * triplets, quintuplets, septuplets and nonuplets in one bar.
 */
public final class Grid {
    public static final long FINEST = 64 * 9 * 5 * 7;

    private static final long PARTS_OF_A_COUNT = 4;

    private long parts;

    /** A grid that reaches the quarters of this meter's counts. */
    public Grid(Meter meter) {
        parts = PARTS_OF_A_COUNT * meter.unit();
    }

    /** Makes the grid fine enough for {@code time}; false, and no change, where it would become too fine. */
    public boolean admit(Fraction time) {
        long under = time.denominator();
        if (parts % under == 0) {
            return true;
        }
        if (under > FINEST) {
            return false;
        }
        long finer = parts / Fraction.gcd(parts, under) * under;
        if (finer > FINEST) {
            return false;
        }
        parts = finer;
        return true;
    }
}
