package groundbass.theory;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** A chord as players write it above a bar: a {@link Chord}, or {@link NoChord}. */
public sealed interface ChordSymbol {
    NoChord NO_CHORD = new NoChord();

    /** The names of the tones from the root up, the bass note of a slash chord not included; empty for no chord. */
    List<NoteName> tones();

    /** Reads {@code Bbmaj7/D} or {@code N.C.}; empty where no such chord is known. */
    static Optional<ChordSymbol> parse(String text) {
        if (text.equals(NO_CHORD.toString())) {
            return Optional.of(NO_CHORD);
        }
        int slash = text.lastIndexOf('/');
        if (slash > 0) {
            var bass = NoteName.parse(text.substring(slash + 1));
            if (bass.isPresent()) {
                return Chord.parse(text.substring(0, slash), bass);
            }
        }
        return Chord.parse(text, Optional.empty());
    }

    /** A root, a quality, and the bass note where it is not the root. */
    record Chord(NoteName root, Quality quality, Optional<NoteName> bass) implements ChordSymbol {
        private static final int LONGEST_ROOT = 1 + NoteName.MOST_ALTERED;

        public Chord {
            Objects.requireNonNull(root);
            Objects.requireNonNull(quality);
            bass = bass.filter(note -> !note.equals(root));
        }

        public static Chord of(NoteName root, Quality quality) {
            return new Chord(root, quality, Optional.empty());
        }

        @Override
        public List<NoteName> tones() {
            return quality.degrees().stream().map(degree -> degree.above(root)).toList();
        }

        /** Which tone of the chord a pitch class is, slash bass not counted; empty where it is none. */
        public Optional<Degree> degree(int pitchClass) {
            int above = Math.floorMod(pitchClass - root.pitchClass(), 12);
            return quality.degrees().stream()
                    .filter(degree -> degree.semitones() % 12 == above)
                    .findFirst();
        }

        /**
         * The tones that tell this chord from others on its root: the third (or what stands for it) and the seventh, or
         * the sixth where there is none.
         */
        public List<Degree> guideTones() {
            var degrees = quality.degrees();
            var third = Stream.of(3, 4, 2)
                    .flatMap(number -> numbered(degrees, number))
                    .limit(1);
            var seventh =
                    Stream.of(7, 6).flatMap(number -> numbered(degrees, number)).limit(1);
            return Stream.concat(third, seventh).toList();
        }

        private static Stream<Degree> numbered(List<Degree> degrees, int number) {
            return degrees.stream().filter(degree -> degree.number() == number);
        }

        private static Optional<ChordSymbol> parse(String text, Optional<NoteName> bass) {
            for (int length = Math.min(LONGEST_ROOT, text.length()); length >= 1; length--) {
                var root = NoteName.parse(text.substring(0, length));
                var quality = Quality.ofSuffix(text.substring(length));
                if (root.isPresent() && quality.isPresent()) {
                    return Optional.of(new Chord(root.get(), quality.get(), bass));
                }
            }
            return Optional.empty();
        }

        @Override
        public String toString() {
            return root + quality.suffix() + bass.map(note -> "/" + note).orElse("");
        }
    }

    /** Silence of the harmony, written {@code N.C.}. */
    record NoChord() implements ChordSymbol {
        @Override
        public List<NoteName> tones() {
            return List.of();
        }

        @Override
        public String toString() {
            return "N.C.";
        }
    }
}
