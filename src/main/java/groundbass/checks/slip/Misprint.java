package groundbass.checks.slip;

import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How a place comes to be written where another was meant: a string beside it, a fret beside it, an octave, a digit struck
 * twice. How likely each is, is ours (rule: slip-weights).
 */
final class Misprint {
    private static final int OCTAVE = 12;
    private static final double MOST_LIKELY = 1.5;
    private static final double LIKELY = 1;
    private static final double POSSIBLE = 0.5;
    private static final double UNLIKELY = -2;

    private Misprint() {}

    /** The places that were likely meant where this one is written, as far as the neck goes. */
    static Stream<Place> meant(Fretted written, int strings, int frets) {
        var beside = IntStream.of(written.string() - 1, written.string() + 1)
                .filter(string -> string >= 1 && string <= strings)
                .mapToObj(string -> Place.of(string, written.fret()));
        var along = IntStream.of(written.fret() - 1, written.fret() + 1, once(written.fret()))
                .filter(fret -> fret >= 0 && fret <= frets && fret != written.fret())
                .mapToObj(fret -> Place.of(written.string(), fret));
        return Stream.concat(beside, along).distinct();
    }

    /** How readily one place is written for another; negative where more than one thing would have gone wrong. */
    static double ease(Place written, Place meant) {
        if (!(written instanceof Fretted here && meant instanceof Fretted there)) {
            return written.string() == meant.string() ? LIKELY : UNLIKELY;
        }
        if (here.fret() == there.fret()) {
            return Math.abs(here.string() - there.string()) == 1 ? LIKELY : UNLIKELY;
        }
        return here.string() == there.string() ? ease(here.fret(), there.fret()) : UNLIKELY;
    }

    private static double ease(int written, int meant) {
        int apart = Math.abs(written - meant);
        if (apart > 0 && once(written) == meant) {
            return MOST_LIKELY;
        }
        if (apart == 1) {
            return LIKELY;
        }
        return apart == 2 || apart == OCTAVE ? POSSIBLE : UNLIKELY;
    }

    /** What was meant where a digit was struck twice: 2 for 22. */
    private static int once(int fret) {
        return fret > 9 && fret / 10 == fret % 10 ? fret % 10 : fret;
    }
}
