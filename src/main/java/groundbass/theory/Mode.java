package groundbass.theory;

import java.util.List;
import java.util.Locale;

/**
 * The modes a key may stand in, each with its steps above the tonic and its place in the circle of fifths (rule:
 * mode-signatures).
 */
public enum Mode {
    MAJOR(0, 0, 2, 4, 5, 7, 9, 11),
    MINOR(-3, 0, 2, 3, 5, 7, 8, 10),
    DORIAN(-2, 0, 2, 3, 5, 7, 9, 10),
    PHRYGIAN(-4, 0, 1, 3, 5, 7, 8, 10),
    LYDIAN(1, 0, 2, 4, 6, 7, 9, 11),
    MIXOLYDIAN(-1, 0, 2, 4, 5, 7, 9, 10),
    LOCRIAN(-5, 0, 1, 3, 5, 6, 8, 10);

    private final int fifthsFromMajor;
    private final List<Integer> steps;

    Mode(int fifthsFromMajor, Integer... steps) {
        this.fifthsFromMajor = fifthsFromMajor;
        this.steps = List.of(steps);
    }

    /** How many fifths the signature lies above that of the major key on the same tonic. */
    public int fifthsFromMajor() {
        return fifthsFromMajor;
    }

    /** Semitones of the seven degrees above the tonic. */
    public List<Integer> steps() {
        return steps;
    }

    /** Whether the third is a minor third. */
    public boolean isMinorish() {
        return steps.get(2) == 3;
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
