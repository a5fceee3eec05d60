package groundbass.score;

import static java.lang.Math.addExact;
import static java.lang.Math.multiplyExact;

import java.util.Collection;

/** An exact fraction in lowest terms. As a time its unit is the whole note. */
public record Fraction(long numerator, long denominator) implements Comparable<Fraction> {
    public static final Fraction ZERO = new Fraction(0, 1);
    public static final Fraction ONE = new Fraction(1, 1);

    public Fraction {
        if (denominator <= 0) {
            throw new IllegalArgumentException("denominator must be positive: " + numerator + "/" + denominator);
        }
        long common = common(Math.abs(numerator), denominator);
        if (common > 1) {
            numerator /= common;
            denominator /= common;
        }
    }

    public static Fraction of(long numerator, long denominator) {
        return new Fraction(numerator, denominator);
    }

    public static Fraction of(long whole) {
        return new Fraction(whole, 1);
    }

    public static Fraction sum(Collection<Fraction> terms) {
        return terms.stream().reduce(ZERO, Fraction::plus);
    }

    public Fraction plus(Fraction that) {
        if (denominator == that.denominator) {
            return new Fraction(addExact(numerator, that.numerator), denominator);
        }
        return new Fraction(
                addExact(multiplyExact(numerator, that.denominator), multiplyExact(that.numerator, denominator)),
                multiplyExact(denominator, that.denominator));
    }

    public Fraction minus(Fraction that) {
        return plus(that.negated());
    }

    public Fraction negated() {
        return new Fraction(-numerator, denominator);
    }

    public Fraction times(Fraction that) {
        return new Fraction(multiplyExact(numerator, that.numerator), multiplyExact(denominator, that.denominator));
    }

    public Fraction times(long factor) {
        return times(of(factor));
    }

    /** @throws IllegalArgumentException if {@code that} is not positive */
    public Fraction dividedBy(Fraction that) {
        if (!that.isPositive()) {
            throw new IllegalArgumentException("divisor must be positive: " + that);
        }
        return times(new Fraction(that.denominator, that.numerator));
    }

    public Fraction dividedBy(long divisor) {
        return dividedBy(of(divisor));
    }

    /** The greatest whole number that is not above this fraction. */
    public long floor() {
        return Math.floorDiv(numerator, denominator);
    }

    /** What is left of this after the greatest whole multiple of {@code step}. */
    public Fraction modulo(Fraction step) {
        return minus(step.times(dividedBy(step).floor()));
    }

    public Fraction min(Fraction that) {
        return compareTo(that) <= 0 ? this : that;
    }

    public Fraction max(Fraction that) {
        return compareTo(that) >= 0 ? this : that;
    }

    public boolean isZero() {
        return numerator == 0;
    }

    public boolean isPositive() {
        return numerator > 0;
    }

    public boolean isNegative() {
        return numerator < 0;
    }

    public boolean isBefore(Fraction that) {
        return compareTo(that) < 0;
    }

    public boolean isAfter(Fraction that) {
        return compareTo(that) > 0;
    }

    /** Whether this is a whole multiple of {@code step}. */
    public boolean isOnGrid(Fraction step) {
        return modulo(step).isZero();
    }

    /** For where exactness ends: seconds and the page. */
    public double toDouble() {
        return (double) numerator / denominator;
    }

    @Override
    public int compareTo(Fraction that) {
        if (denominator == that.denominator) {
            return Long.compare(numerator, that.numerator);
        }
        return Long.compare(multiplyExact(numerator, that.denominator), multiplyExact(that.numerator, denominator));
    }

    @Override
    public String toString() {
        return denominator == 1 ? "" + numerator : numerator + "/" + denominator;
    }

    /** Nearly all times in music come from halving, and for them no division is needed. */
    private static long common(long numerator, long denominator) {
        boolean halved = Long.bitCount(denominator) == 1;
        if (!halved) {
            return gcd(numerator, denominator);
        }
        return numerator == 0 ? denominator : Math.min(denominator, Long.lowestOneBit(numerator));
    }

    static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
