package groundbass.score;

import java.util.OptionalInt;

/**
 * A harmonic: natural, over the open string at the note's own fret, or artificial, over the stopped note and touched
 * at another fret.
 *
 * @param touchedFret empty for a natural harmonic
 */
public record Harmonic(OptionalInt touchedFret) {
    public static final Harmonic NATURAL = new Harmonic(OptionalInt.empty());

    /** How far a finger may stand from a node and still sound it, in frets (rule: harmonic-nodes). */
    private static final double TOLERANCE = 0.3;

    private static final int HIGHEST_PARTIAL = 8;

    /** Where a finger of the plucking hand still reaches, in frets, imagined ones included. */
    public static final int HIGHEST_TOUCHED = 2 * Place.Fretted.MOST_FRETS;

    public Harmonic {
        if (touchedFret.isPresent() && (touchedFret.getAsInt() < 1 || touchedFret.getAsInt() > HIGHEST_TOUCHED)) {
            throw new IllegalArgumentException("no harmonic is touched at " + touchedFret.getAsInt());
        }
    }

    public static Harmonic touchedAt(int fret) {
        return new Harmonic(OptionalInt.of(fret));
    }

    /**
     * Semitones from the open string to what sounds, for a note stopped (or touched, if natural) at {@code fret}; empty
     * where no node of the first eight partials lies there.
     */
    public OptionalInt semitonesAboveOpen(int fret) {
        int stopped = touchedFret.isPresent() ? fret : 0;
        int touched = touchedFret.orElse(fret);
        var partial = partialAt(touched - stopped);
        return partial.isPresent() ? OptionalInt.of(stopped + semitones(partial.getAsInt())) : OptionalInt.empty();
    }

    /** The lowest partial with a node {@code frets} above the end of the string: fret = 12 log2(k / (k - j)). */
    private static OptionalInt partialAt(int frets) {
        for (int partial = 2; partial <= HIGHEST_PARTIAL; partial++) {
            for (int node = 1; node < partial; node++) {
                double at = octaves((double) partial / (partial - node)) * 12;
                if (Math.abs(at - frets) <= TOLERANCE) {
                    return OptionalInt.of(partial);
                }
            }
        }
        return OptionalInt.empty();
    }

    private static int semitones(int partial) {
        return (int) Math.round(12 * octaves(partial));
    }

    private static double octaves(double ratio) {
        return StrictMath.log(ratio) / StrictMath.log(2);
    }
}
