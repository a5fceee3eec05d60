package groundbass.theory;

import java.util.Optional;

/**
 * The distance between two spelled pitches (rule: interval-sizes).
 *
 * @param number 1 for a unison, 8 for an octave, 10 for a tenth
 * @param semitones from the lower to the higher
 */
public record Interval(int number, int semitones) {
    /** What an interval is called beside its number. */
    public enum Kind {
        DIMINISHED("diminished"),
        MINOR("minor"),
        PERFECT("perfect"),
        MAJOR("major"),
        AUGMENTED("augmented");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Interval {
        if (number < 1) {
            throw new IllegalArgumentException("intervals count from 1: " + number);
        }
    }

    /** The interval between two pitches, whichever is lower. */
    public static Interval between(Pitch one, Pitch other) {
        int steps = other.diatonicIndex() - one.diatonicIndex();
        int semitones = other.midi() - one.midi();
        return steps < 0 || (steps == 0 && semitones < 0)
                ? new Interval(1 - steps, -semitones)
                : new Interval(1 + steps, semitones);
    }

    /** Perfect, major, minor and so on; empty for what is altered twice. */
    public Optional<Kind> kind() {
        int octaves = (number - 1) / 7;
        int altered = semitones - 12 * octaves - Mode.MAJOR.steps().get((number - 1) % 7);
        boolean perfect = isPerfect();
        return switch (altered) {
            case 0 -> Optional.of(perfect ? Kind.PERFECT : Kind.MAJOR);
            case 1 -> Optional.of(Kind.AUGMENTED);
            case -1 -> Optional.of(perfect ? Kind.DIMINISHED : Kind.MINOR);
            case -2 -> perfect ? Optional.empty() : Optional.of(Kind.DIMINISHED);
            default -> Optional.empty();
        };
    }

    private boolean isPerfect() {
        int simple = (number - 1) % 7 + 1;
        return simple == 1 || simple == 4 || simple == 5;
    }
}
