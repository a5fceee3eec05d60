package groundbass.theory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * What key notes seem to be in: the weights of their pitch classes compared with a published profile in its 24
 * rotations (Krumhansl 1990; rule: key-by-profile). Profiles know only major and minor; modal lines, riffs and blues come out as near ties, so
 * a finding is a hint beside what the educator says, never in its place.
 *
 * @param candidates all 24 keys, the best first, each in its simplest spelling
 */
public record KeyFinding(List<Candidate> candidates) {
    /** A margin from which the best key stands clear of the next (common practice, no source). */
    private static final double CLEAR = 0.1;

    private static final double FITTING = 0.7;

    /** A key and how well the notes fit it, -1 to 1. */
    public record Candidate(Key key, double correlation) {}

    /** How much a finding is worth. */
    public enum Certainty {
        CLEAR,
        LIKELY,
        OPEN
    }

    public KeyFinding {
        candidates = List.copyOf(candidates);
    }

    public static KeyFinding of(PitchWeights weights, KeyProfile profile) {
        var candidates = new ArrayList<Candidate>();
        for (int tonic = 0; tonic < 12; tonic++) {
            for (var mode : List.of(Mode.MAJOR, Mode.MINOR)) {
                double correlation = profile.correlation(weights, tonic, mode == Mode.MINOR);
                candidates.add(new Candidate(simplest(tonic, mode), correlation));
            }
        }
        candidates.sort(Comparator.comparingDouble(Candidate::correlation).reversed());
        return new KeyFinding(candidates);
    }

    public Key best() {
        return candidates.get(0).key();
    }

    /** By how much the best key fits better than the next. */
    public double margin() {
        return candidates.get(0).correlation() - candidates.get(1).correlation();
    }

    /** How sure the finding is. */
    public Certainty certainty() {
        boolean fits = candidates.get(0).correlation() >= FITTING;
        if (margin() >= CLEAR) {
            return fits ? Certainty.CLEAR : Certainty.LIKELY;
        }
        return fits && margin() >= CLEAR / 2 ? Certainty.LIKELY : Certainty.OPEN;
    }

    /** The key of this sound with the fewest signs; of F sharp and G flat, sharps in major and flats in minor. */
    private static Key simplest(int tonic, Mode mode) {
        var fewest = Comparator.comparingInt((Key key) -> Math.abs(key.fifths()))
                .thenComparing(key -> mode == Mode.MAJOR ? -key.fifths() : key.fifths());
        return names(tonic)
                .filter(name -> Key.isWritable(name, mode))
                .map(name -> new Key(name, mode))
                .min(fewest)
                .orElseThrow();
    }

    private static Stream<NoteName> names(int pitchClass) {
        return Stream.of(Letter.values())
                .flatMap(letter -> Stream.of(-1, 0, 1).map(alteration -> new NoteName(letter, alteration)))
                .filter(name -> name.pitchClass() == pitchClass);
    }
}
