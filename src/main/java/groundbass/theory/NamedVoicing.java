package groundbass.theory;

import groundbass.text.Message;
import groundbass.theory.ChordSymbol.Chord;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Notes that sound together, named.
 *
 * @param chord what they make; for two notes, what is certain of it
 * @param tones their degrees above the root, from the lowest note up, octaves left out
 */
public record NamedVoicing(Chord chord, List<Degree> tones, Shape shape) {
    /** How a chord is laid out (rule: shell-voicings; the names are common practice, no source). */
    public enum Shape {
        /** Root and octave. */
        OCTAVE("octave"),
        /** Root and fifth, with or without the octave. */
        POWER("power"),
        /** Root and the third an octave above. */
        TENTH("tenth"),
        /** Root, third and seventh, without the fifth. */
        SHELL("shell"),
        /** The third and the seventh alone, the notes that tell the chord. */
        GUIDE_TONES("guide-tones"),
        /** The root lies lowest. */
        ROOT_POSITION("root-position"),
        /** Another tone lies lowest. */
        INVERSION("inversion"),
        /** Two notes that could be part of many chords. */
        PAIR("pair");

        private final String word;

        Shape(String word) {
            this.word = word;
        }
    }

    private static final Degree FIFTH = new Degree(5, 0);

    public NamedVoicing {
        Objects.requireNonNull(chord);
        Objects.requireNonNull(shape);
        tones = List.copyOf(tones);
    }

    /**
     * Names at least two notes, lowest first. They are read as tones of {@code over} where all of them belong to it, else
     * as the chord with the fewest tones missing, on the lowest note before any other; empty where there is none.
     */
    public static Optional<NamedVoicing> of(List<Pitch> lowestFirst, Optional<Chord> over) {
        var classes =
                lowestFirst.stream().map(pitch -> pitch.name().pitchClass()).toList();
        if (lowestFirst.size() < 2) {
            return Optional.empty();
        }
        return over.filter(chord -> containsAll(chord, classes))
                .or(() -> guess(lowestFirst, classes))
                .map(chord -> named(chord, lowestFirst, classes));
    }

    /** Its name: {@code the third and the seventh of C9}. */
    public Message said() {
        return Message.of("theory.voicing." + shape.word, chord.toString());
    }

    private static boolean containsAll(Chord chord, List<Integer> classes) {
        return classes.stream().allMatch(pitchClass -> chord.degree(pitchClass).isPresent());
    }

    private static Optional<Chord> guess(List<Pitch> notes, List<Integer> classes) {
        var distinct = classes.stream().distinct().toList();
        return notes.stream()
                .map(Pitch::name)
                .distinct()
                .flatMap(root -> Arrays.stream(Quality.values()).map(quality -> Chord.of(root, quality)))
                .filter(chord -> containsAll(chord, distinct) && hasItsSkeleton(chord, distinct))
                .min(Comparator.comparing((Chord chord) -> chord.tones().size() - distinct.size())
                        .thenComparing(chord -> chord.root().equals(notes.get(0).name()) ? 0 : 1)
                        .thenComparing(chord -> chord.quality().ordinal()));
    }

    /** Nothing but a fifth may be missing: not when it is altered, nor where no third tells the chord instead. */
    private static boolean hasItsSkeleton(Chord chord, List<Integer> classes) {
        var degrees = chord.quality().degrees();
        boolean third = degrees.stream().anyMatch(degree -> degree.number() == 3);
        return degrees.stream()
                .filter(degree -> !classes.contains(degree.above(chord.root()).pitchClass()))
                .allMatch(degree -> third && degree.equals(FIFTH));
    }

    private static NamedVoicing named(Chord chord, List<Pitch> notes, List<Integer> classes) {
        var tones = classes.stream()
                .map(pitchClass -> chord.degree(pitchClass).orElseThrow())
                .toList();
        return new NamedVoicing(chord, tones, shape(chord, tones, notes));
    }

    private static Shape shape(Chord chord, List<Degree> tones, List<Pitch> notes) {
        var distinct = tones.stream().distinct().toList();
        if (isOnly(distinct, 1)) {
            return Shape.OCTAVE;
        }
        if (distinct.size() == 2 && chord.guideTones().containsAll(distinct)) {
            return Shape.GUIDE_TONES;
        }
        if (tones.get(0).number() != 1) {
            return distinct.size() > 2 ? Shape.INVERSION : Shape.PAIR;
        }
        if (isOnly(distinct, 1, 5)) {
            return Shape.POWER;
        }
        int span = notes.get(notes.size() - 1).midi() - notes.get(0).midi();
        if (isOnly(distinct, 1, 3)) {
            return span > 12 ? Shape.TENTH : Shape.PAIR;
        }
        return isOnly(distinct, 1, 3, 7) ? Shape.SHELL : distinct.size() > 2 ? Shape.ROOT_POSITION : Shape.PAIR;
    }

    private static boolean isOnly(List<Degree> distinct, Integer... numbers) {
        return distinct.stream().map(Degree::number).sorted().toList().equals(List.of(numbers));
    }
}
