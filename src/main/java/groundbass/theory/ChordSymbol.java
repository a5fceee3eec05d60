package groundbass.theory;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

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
