package groundbass.groove;

import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A chord in open position in the middle of a keyboard: the tone next to the lowest lies an octave higher, so that nothing
 * is close at the bottom (rule: open-voicings).
 *
 * @param midi from the lowest up; empty where nothing sounds
 */
public record Voicing(List<Integer> midi) {
    /** The lowest tone lies between these two, D3 to C4, above most of the bass (common practice, no source). */
    private static final int LOWEST = 50;

    private static final int HIGHEST_BOTTOM = 60;

    /** Where the middle of the first chord should lie: about B3 to C4. */
    private static final int MIDDLE = 60;

    private static final int MOST_TONES = 4;
    private static final int FEWEST_TO_OPEN = 3;
    private static final int OCTAVE = 12;
    private static final Voicing SILENCE = new Voicing(List.of());

    public Voicing {
        midi = List.copyOf(midi);
    }

    /** Every open position of a chord in the middle of a keyboard, from the lowest up; one silent one for no chord. */
    static List<Voicing> positions(ChordSymbol symbol) {
        return symbol instanceof Chord chord ? inversions(tones(chord)) : List.of(SILENCE);
    }

    /** How far the voices go from those of {@code before}, in semitones, each to the nearest. */
    int movement(Voicing before) {
        return nearest(midi, before.midi()) + nearest(before.midi(), midi);
    }

    /** How far its voices lie from the middle, all together. */
    int distance() {
        return Math.abs(midi.stream().mapToInt(Integer::intValue).sum() - MIDDLE * midi.size());
    }

    private static int nearest(List<Integer> from, List<Integer> to) {
        return from.stream()
                .mapToInt(tone -> to.stream()
                        .mapToInt(other -> Math.abs(other - tone))
                        .min()
                        .orElse(0))
                .sum();
    }

    /** Pitch classes; with more than four tones the bass keeps the root, then the fifth goes. */
    private static List<Integer> tones(Chord chord) {
        var degrees = new ArrayList<>(chord.quality().degrees());
        for (var spare : List.of(new Degree(1, 0), new Degree(5, 0), new Degree(9, 0))) {
            if (degrees.size() > MOST_TONES) {
                degrees.remove(spare);
            }
        }
        int root = chord.root().pitchClass();
        return degrees.stream()
                .map(degree -> Math.floorMod(root + degree.semitones(), OCTAVE))
                .sorted()
                .distinct()
                .toList();
    }

    private static List<Voicing> inversions(List<Integer> tones) {
        return IntStream.rangeClosed(LOWEST, HIGHEST_BOTTOM)
                .filter(bottom -> tones.contains(bottom % OCTAVE))
                .mapToObj(bottom -> opened(tones.stream()
                        .map(tone -> bottom + Math.floorMod(tone - bottom, OCTAVE))
                        .sorted()
                        .toList()))
                .toList();
    }

    private static Voicing opened(List<Integer> close) {
        if (close.size() < FEWEST_TO_OPEN) {
            return new Voicing(close);
        }
        var open = new ArrayList<>(close);
        open.add(open.remove(1) + OCTAVE);
        return new Voicing(open);
    }
}
