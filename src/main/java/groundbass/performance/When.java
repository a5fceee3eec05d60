package groundbass.performance;

import groundbass.score.Fraction;

/**
 * A stretch of a performance, from the start of its count-in: exactly in whole notes, and in seconds.
 *
 * @param until when it falls silent
 */
public record When(Fraction at, Fraction until, double start, double end) {
    public When {
        if (at.isNegative() || !at.isBefore(until)) {
            throw new IllegalArgumentException("time runs forward: " + at + " to " + until);
        }
    }

    static When of(Fraction at, Fraction until, TempoMap tempos) {
        return new When(at, until, tempos.seconds(at), tempos.seconds(until));
    }

    public double seconds() {
        return end - start;
    }
}
