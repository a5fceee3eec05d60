package groundbass.theory;

import groundbass.text.Message;
import java.util.List;
import java.util.stream.Stream;

/** Scales by their degrees above the tonic, as theory handbooks list them (rule: scale-degrees). */
public enum Scale {
    MAJOR("major", "1 2 3 4 5 6 7"),
    DORIAN("dorian", "1 2 b3 4 5 6 b7"),
    PHRYGIAN("phrygian", "1 b2 b3 4 5 b6 b7"),
    LYDIAN("lydian", "1 2 3 #4 5 6 7"),
    MIXOLYDIAN("mixolydian", "1 2 3 4 5 6 b7"),
    MINOR("minor", "1 2 b3 4 5 b6 b7"),
    LOCRIAN("locrian", "1 b2 b3 4 b5 b6 b7"),
    HARMONIC_MINOR("harmonic-minor", "1 2 b3 4 5 b6 7"),
    MELODIC_MINOR("melodic-minor", "1 2 b3 4 5 6 7"),
    MAJOR_PENTATONIC("major-pentatonic", "1 2 3 5 6"),
    MINOR_PENTATONIC("minor-pentatonic", "1 b3 4 5 b7"),
    BLUES("blues", "1 b3 4 b5 5 b7"),
    WHOLE_TONE("whole-tone", "1 2 3 #4 #5 b7"),
    DIMINISHED("diminished", "1 b2 b3 3 #4 5 6 b7"),
    CHROMATIC("chromatic", "1 b2 2 b3 3 4 b5 5 b6 6 b7 7");

    private final String word;
    private final List<Degree> degrees;
    private final List<Integer> semitones;

    Scale(String word, String degrees) {
        this.word = word;
        this.degrees = Stream.of(degrees.split(" ")).map(Degree::parse).toList();
        this.semitones = this.degrees.stream().map(Degree::semitones).toList();
    }

    /** The scale of a key in this mode. */
    public static Scale of(Mode mode) {
        return switch (mode) {
            case MAJOR -> MAJOR;
            case MINOR -> MINOR;
            case DORIAN -> DORIAN;
            case PHRYGIAN -> PHRYGIAN;
            case LYDIAN -> LYDIAN;
            case MIXOLYDIAN -> MIXOLYDIAN;
            case LOCRIAN -> LOCRIAN;
        };
    }

    /** From the tonic up, within an octave. */
    public List<Degree> degrees() {
        return degrees;
    }

    public int size() {
        return degrees.size();
    }

    /** Semitones of the degrees above the tonic, rising. */
    public List<Integer> semitones() {
        return semitones;
    }

    public List<NoteName> on(NoteName tonic) {
        return degrees.stream().map(degree -> degree.above(tonic)).toList();
    }

    /** Which step of the scale on {@code tonic}, from 0, a pitch class is; -1 where it is none. */
    public int step(NoteName tonic, int pitchClass) {
        return semitones.indexOf(Math.floorMod(pitchClass - tonic.pitchClass(), 12));
    }

    public boolean contains(NoteName tonic, int pitchClass) {
        return step(tonic, pitchClass) >= 0;
    }

    /** Its name on a tonic: {@code A Dorian}. */
    public Message saidOn(NoteName tonic) {
        return Message.of("theory.scale." + word, tonic.spoken());
    }
}
