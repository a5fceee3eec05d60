package groundbass.fingering;

import groundbass.score.Header;
import groundbass.score.Tuning;
import java.util.Objects;

/**
 * A neck in millimetres.
 *
 * @param scale length of the open string from nut to bridge, in millimetres
 */
public record Fretboard(Tuning tuning, int frets, double scale) {
    /** 34 inches, the usual bass; an inch is 25.4 mm. rule: fret-distance. */
    public static final double LONG = 863.6;

    public static final double SHORT = 762.0;

    public Fretboard {
        Objects.requireNonNull(tuning);
        if (!(scale > 0)) {
            throw new IllegalArgumentException("a string has a length: " + scale);
        }
    }

    /** The neck that a line is written for, of the usual length. */
    public static Fretboard of(Header header) {
        return new Fretboard(header.tuning(), header.frets(), LONG);
    }

    /** Millimetres from the nut to the wire of {@code fret}: L (1 - 2^(-n/12)), twelve-tone equal temperament. */
    public double fromNut(int fret) {
        return scale * (1 - StrictMath.pow(2, -fret / 12.0));
    }

    /** Millimetres between two wires. */
    public double reach(int fret, int other) {
        return Math.abs(fromNut(other) - fromNut(fret));
    }
}
