package groundbass.intake.xml.document;

import groundbass.score.Fraction;
import groundbass.score.Grid;
import java.util.Optional;

/** Where in its measure the reading is; what the file counts in divisions becomes whole notes here. Mutable. */
public final class Cursor {
    /** What a bar can be divided into at the most; finer times are rounded to it, so that sums stay exact and small. */
    private static final Fraction FINEST = Fraction.of(1, Grid.FINEST);

    private static final Fraction HALF = Fraction.of(1, 2);

    private Fraction divisions = Fraction.ONE;
    private Fraction now = Fraction.ZERO;
    private Fraction lastOnset = Fraction.ZERO;
    private Fraction furthest = Fraction.ZERO;

    /** To the beginning of a measure. */
    public void begin() {
        now = Fraction.ZERO;
        lastOnset = Fraction.ZERO;
        furthest = Fraction.ZERO;
    }

    public void divide(Fraction parts) {
        divisions = parts.isPositive() ? parts : divisions;
    }

    public Fraction now() {
        return now;
    }

    /** Where the last note began, for those that sound with it. */
    public Fraction lastOnset() {
        return lastOnset;
    }

    /** How far any voice has come. */
    public Fraction furthest() {
        return furthest;
    }

    /** A duration or an offset. */
    public Optional<Fraction> length(XmlElement element, String child) {
        return element.text(child)
                .flatMap(XmlNumbers::decimal)
                .map(parts -> bounded(parts.dividedBy(4).dividedBy(divisions)));
    }

    /** Past a note or rest. */
    public void advance(Fraction length) {
        lastOnset = now;
        now = bounded(now.plus(length));
        furthest = furthest.max(now);
    }

    public void back(Fraction length) {
        now = bounded(now.minus(length)).max(Fraction.ZERO);
    }

    public static Fraction bounded(Fraction time) {
        return time.denominator() <= Grid.FINEST
                ? time
                : FINEST.times(time.dividedBy(FINEST).plus(HALF).floor());
    }
}
