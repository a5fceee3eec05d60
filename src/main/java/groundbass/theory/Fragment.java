package groundbass.theory;

import groundbass.text.Message;
import groundbass.theory.ChordSymbol.Chord;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A run that has a name: a stretch of a scale, a broken chord, semitones.
 *
 * @param tonic of the scale, or root of the chord; of a chromatic run, its first note
 * @param chord the chord that is broken, where the run is one
 * @param rising whether it goes up; every run goes one way only
 */
public record Fragment(NoteName tonic, Scale scale, Optional<Chord> chord, boolean rising) {
    /** Fewer notes have no name worth saying. */
    public static final int FEWEST = 4;

    /** A broken chord is one with its three tones. */
    public static final int FEWEST_OF_CHORD = 3;

    public Fragment {
        Objects.requireNonNull(tonic);
        Objects.requireNonNull(scale);
        Objects.requireNonNull(chord);
    }

    /**
     * The name of notes played one after the other in a key, over a chord where there is one; empty where they turn, leap
     * or leave every scale. The key's own scale comes first, then the broken chord, then the pentatonic and blues scales
     * on the tonic, and semitones last.
     */
    public static Optional<Fragment> of(Key key, Optional<Chord> chord, List<Pitch> notes) {
        if (notes.size() < FEWEST_OF_CHORD || !isOneWay(notes)) {
            return Optional.empty();
        }
        boolean rising = notes.get(1).midi() > notes.get(0).midi();
        var broken = chord.filter(symbol -> isBroken(symbol, notes))
                .map(symbol -> new Fragment(symbol.root(), Scale.of(key.mode()), chord, rising));
        if (broken.isPresent() || notes.size() < FEWEST) {
            return broken;
        }
        return scales(key)
                .filter(scale -> isStepwise(scale, key.tonic(), notes))
                .findFirst()
                .map(scale -> new Fragment(key.tonic(), scale, Optional.empty(), rising))
                .or(() -> chromatic(notes, rising));
    }

    private static Stream<Scale> scales(Key key) {
        var pentatonic = key.mode().isMinorish() ? Scale.MINOR_PENTATONIC : Scale.MAJOR_PENTATONIC;
        var others = key.mode().isMinorish()
                ? Stream.of(pentatonic, Scale.BLUES, Scale.HARMONIC_MINOR, Scale.MELODIC_MINOR)
                : Stream.of(pentatonic, Scale.MINOR_PENTATONIC, Scale.BLUES);
        return Stream.concat(Stream.of(Scale.of(key.mode())), others);
    }

    private static Optional<Fragment> chromatic(List<Pitch> notes, boolean rising) {
        boolean semitones = steps(notes).map(Math::abs).allMatch(step -> step == 1);
        return semitones
                ? Optional.of(new Fragment(notes.get(0).name(), Scale.CHROMATIC, Optional.empty(), rising))
                : Optional.empty();
    }

    private static boolean isOneWay(List<Pitch> notes) {
        return steps(notes).allMatch(step -> step > 0) || steps(notes).allMatch(step -> step < 0);
    }

    private static IntStream steps(List<Pitch> notes) {
        return IntStream.range(1, notes.size())
                .map(i -> notes.get(i).midi() - notes.get(i - 1).midi());
    }

    /** Whether each note is the neighbour of the one before in the scale. */
    private static boolean isStepwise(Scale scale, NoteName tonic, List<Pitch> notes) {
        var steps = new ArrayList<Integer>();
        for (var note : notes) {
            int step = scale.step(tonic, note.midi());
            if (step < 0) {
                return false;
            }
            steps.add(step);
        }
        return areNeighbours(steps, scale.size()) && isNarrow(notes);
    }

    private static boolean isNarrow(List<Pitch> notes) {
        return steps(notes).map(Math::abs).allMatch(step -> step <= 4);
    }

    private static boolean areNeighbours(List<Integer> steps, int size) {
        int first = Math.floorMod(steps.get(1) - steps.get(0), size);
        return (first == 1 || first == size - 1)
                && IntStream.range(1, steps.size())
                        .allMatch(i -> Math.floorMod(steps.get(i) - steps.get(i - 1), size) == first);
    }

    private static boolean isBroken(Chord chord, List<Pitch> notes) {
        var tones = chord.tones().stream().map(NoteName::pitchClass).sorted().toList();
        var steps = notes.stream()
                .map(note -> tones.indexOf(Math.floorMod(note.midi(), 12)))
                .toList();
        return tones.size() >= 3 && !steps.contains(-1) && areNeighbours(steps, tones.size());
    }

    /** Its name: {@code a rising fragment of A Dorian}. */
    public Message said() {
        String way = rising ? "rising" : "falling";
        if (chord.isPresent()) {
            return Message.of("theory.fragment.chord." + way, chord.get().toString());
        }
        return scale == Scale.CHROMATIC
                ? Message.of("theory.fragment.chromatic." + way, tonic.spoken())
                : Message.of("theory.fragment.scale." + way, scale.saidOn(tonic));
    }
}
