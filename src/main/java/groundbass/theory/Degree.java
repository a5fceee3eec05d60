package groundbass.theory;

import java.util.Optional;

/** A degree above a root, altered against the major scale: {@code b7}, {@code #11}. Numbers run from 1 to 13. */
public record Degree(int number, int alteration) {
    public Degree {
        if (number < 1 || number > 13 || Math.abs(alteration) > NoteName.MOST_ALTERED) {
            throw new IllegalArgumentException("no such degree: " + number + " altered by " + alteration);
        }
    }

    /** Reads {@code 5}, {@code b3}, {@code bb7}, {@code #9}. */
    public static Degree parse(String text) {
        String signs = text.replaceAll("\\d", "");
        int alteration = signs.startsWith("#") ? signs.length() : -signs.length();
        return new Degree(Integer.parseInt(text.substring(signs.length())), alteration);
    }

    /** The degree, 1 to 7, that {@code name} is above {@code tonic}; empty where it would be altered three times. */
    public static Optional<Degree> of(NoteName tonic, NoteName name) {
        int step = Math.floorMod(name.letter().ordinal() - tonic.letter().ordinal(), 7);
        int sounding = Math.floorMod(name.pitchClass() - tonic.pitchClass(), 12);
        int alteration = Math.floorMod(sounding - Mode.MAJOR.steps().get(step) + 6, 12) - 6;
        return Math.abs(alteration) > NoteName.MOST_ALTERED
                ? Optional.empty()
                : Optional.of(new Degree(step + 1, alteration));
    }

    /** Semitones above the root, more than 12 past the octave. */
    public int semitones() {
        int octaves = (number - 1) / 7;
        return 12 * octaves + Mode.MAJOR.steps().get((number - 1) % 7) + alteration;
    }

    /** This degree's name above {@code root}, respelled on the next letter where it would need a triple sign. */
    public NoteName above(NoteName root) {
        var letter = root.letter().plus(number - 1);
        int sounding = Math.floorMod(root.pitchClass() + semitones(), 12);
        int wanted = Math.floorMod(sounding - letter.semitones() + 6, 12) - 6;
        if (Math.abs(wanted) <= NoteName.MOST_ALTERED) {
            return new NoteName(letter, wanted);
        }
        var next = letter.plus(Integer.signum(wanted));
        return new NoteName(next, Math.floorMod(sounding - next.semitones() + 6, 12) - 6);
    }

    @Override
    public String toString() {
        return (alteration < 0 ? "b" : "#").repeat(Math.abs(alteration)) + number;
    }
}
