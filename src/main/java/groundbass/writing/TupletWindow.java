package groundbass.writing;

import groundbass.score.Fraction;
import java.util.Optional;
import java.util.SortedSet;

/**
 * A stretch of a voice that is divided into {@code actual} equal shares, each drawn as {@code share} lasts.
 *
 * @param normal how many such shapes usually fill the stretch
 */
record TupletWindow(Fraction from, Fraction to, int actual, int normal, Fraction share) {
    /** More shares than this are not counted by anyone, and are drawn by the nearest shapes. */
    static final int MOST_SHARES = 256;

    /**
     * The window with the fewest shares that has a share begin at each edge: n in the time of the next lower power of
     * two, or its multiple in compound time (rule: tuplet-ratio); empty where no shape is short enough.
     */
    static Optional<TupletWindow> of(Fraction from, Fraction to, SortedSet<Fraction> edgesInside) {
        var length = to.minus(from);
        long shares = 1;
        for (var edge : edgesInside) {
            long denominator = edge.minus(from).dividedBy(length).denominator();
            shares = denominator > MOST_SHARES ? denominator : shares / gcd(shares, denominator) * denominator;
            if (shares > MOST_SHARES) {
                return Optional.empty();
            }
        }
        return length.isOnGrid(Pulse.FINEST) ? Optional.of(of(from, to, (int) shares)) : Optional.empty();
    }

    static TupletWindow of(Fraction from, Fraction to, int actual) {
        var length = to.minus(from);
        long normal = length.numerator() / Long.lowestOneBit(length.numerator());
        var share = length.dividedBy(normal);
        while (share.isAfter(Fraction.ONE)
                || (normal * 2 <= actual && !share.dividedBy(2).isBefore(Pulse.FINEST))) {
            normal *= 2;
            share = share.dividedBy(2);
        }
        return new TupletWindow(from, to, actual, Math.toIntExact(normal), share);
    }

    /** How long a shape of {@code shapeLength} lasts in here. */
    Fraction lasting(Fraction shapeLength) {
        return shapeLength.times(Fraction.of(normal, actual));
    }

    /** How long the shape is that lasts {@code length} in here. */
    Fraction shapeLength(Fraction length) {
        return length.times(Fraction.of(actual, normal));
    }

    boolean contains(Fraction at) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
