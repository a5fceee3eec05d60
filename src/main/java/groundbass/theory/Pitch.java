package groundbass.theory;

import java.util.Objects;

/**
 * A spelled pitch in scientific octaves: C4 is middle C, MIDI 60. Equality is by spelling, so C# and Db differ;
 * compare {@link #midi()} for the sound.
 */
public record Pitch(NoteName name, int octave) {
    public static final int LOWEST_OCTAVE = -1;
    /** Above MIDI's highest note lie harmonics that nobody hears, and that must still have a name. */
    public static final int HIGHEST_OCTAVE = 14;

    public Pitch {
        Objects.requireNonNull(name);
        if (octave < LOWEST_OCTAVE || octave > HIGHEST_OCTAVE) {
            throw new IllegalArgumentException("octave out of range: " + octave);
        }
    }

    public static Pitch of(Letter letter, int octave) {
        return new Pitch(NoteName.of(letter), octave);
    }

    /** This name in the octave that sounds as {@code midi}; the name's pitch class must be that of {@code midi}. */
    public static Pitch sounding(NoteName name, int midi) {
        int octave = Math.floorDiv(midi - name.alteration(), 12) - 1;
        var pitch = new Pitch(name, octave);
        if (pitch.midi() != midi) {
            throw new IllegalArgumentException(name + " does not name the pitch " + midi);
        }
        return pitch;
    }

    /** The MIDI note number; middle C is 60 (MIDI 1.0). */
    public int midi() {
        return 12 * (octave + 1) + name.letter().semitones() + name.alteration();
    }

    /** Steps on a staff above C0: one for each line or space. */
    public int diatonicIndex() {
        return 7 * octave + name.letter().ordinal();
    }

    public Pitch octavesUp(int octaves) {
        return new Pitch(name, octave + octaves);
    }

    /** Twelve-tone equal temperament on A4 = 440 Hz (ISO 16). */
    public double hertz() {
        return hertz(midi());
    }

    /** Twelve-tone equal temperament on A4 = 440 Hz (ISO 16; rule: equal-temperament), fractional note numbers included. */
    public static double hertz(double midi) {
        return 440 * StrictMath.pow(2, (midi - 69) / 12);
    }

    @Override
    public String toString() {
        return name.toString() + octave;
    }
}
