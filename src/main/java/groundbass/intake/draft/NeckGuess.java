package groundbass.intake.draft;

import groundbass.score.Tuning;
import java.util.List;
import java.util.stream.Stream;

/** The neck that a part was most likely written for, where its file does not say. */
public final class NeckGuess {
    private static final List<Tuning> NECKS = List.of(
            Tuning.STANDARD,
            Tuning.sounding("G2", "D2", "A1", "D1"),
            Tuning.FIVE_STRING,
            Tuning.SIX_STRING,
            Tuning.sounding("G2", "D2", "A1", "E1", "A0"));

    private NeckGuess() {}

    /** The first of the usual necks that has most of the pitches: four strings, four with a low D, five, six, five with a low A. */
    public static Tuning of(List<Integer> pitches, int frets) {
        return of(NECKS.stream(), pitches, frets);
    }

    /** The same among necks of at least so many strings. */
    public static Tuning of(List<Integer> pitches, int frets, int strings) {
        return of(NECKS.stream().filter(neck -> neck.size() >= Math.min(6, strings)), pitches, frets);
    }

    private static Tuning of(Stream<Tuning> necks, List<Integer> pitches, int frets) {
        return necks.reduce(
                        (best, other) -> reached(other, pitches, frets) > reached(best, pitches, frets) ? other : best)
                .orElse(Tuning.STANDARD);
    }

    private static long reached(Tuning neck, List<Integer> pitches, int frets) {
        return pitches.stream()
                .filter(midi -> !neck.placesOf(midi, frets).isEmpty())
                .count();
    }
}
