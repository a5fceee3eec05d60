package groundbass.theory;

import java.util.List;
import java.util.stream.Stream;

/**
 * Which name a sounding pitch takes in a key: the scale's own name where it has one, else the name it has in the major
 * or minor scale on the same tonic (so the leading note of a minor key is a sharp seventh, and b3 and b7 stay flats).
 * Three notes belong to neither: they are raised degrees on the way up and lowered ones otherwise, but the b5 of a minor
 * key, the blue note, stays flat (rule: outside-notes). A raised or lowered degree takes its other
 * name where the first would hide a natural note, as C flat does in F major (common practice, no source).
 */
public final class Spelling {
    private static final List<Degree> FALLING = degrees("1 b2 2 b3 3 4 b5 5 b6 6 b7 7");
    private static final List<Degree> RISING = degrees("1 #1 2 b3 3 4 #4 5 #5 6 b7 7");
    private static final List<Degree> RISING_IN_MINOR = degrees("1 #1 2 b3 3 4 b5 5 b6 6 b7 7");

    private Spelling() {}

    /** The pitch sounding as {@code midi} in {@code key}, where nothing is known of what follows. */
    public static Pitch of(Key key, int midi) {
        return of(key, midi, midi);
    }

    /** The pitch sounding as {@code midi} in {@code key}, on the way to {@code nextMidi}. */
    public static Pitch of(Key key, int midi, int nextMidi) {
        int pitchClass = Math.floorMod(midi, 12);
        var name = key.scale().stream()
                .filter(degree -> degree.pitchClass() == pitchClass)
                .findFirst()
                .orElseGet(() -> outside(key, pitchClass, nextMidi > midi));
        return Pitch.sounding(name, midi);
    }

    private static NoteName outside(Key key, int pitchClass, boolean rising) {
        int semitones = Math.floorMod(pitchClass - key.tonic().pitchClass(), 12);
        var raised = key.mode().isMinorish() ? RISING_IN_MINOR : RISING;
        var name = (rising ? raised : FALLING).get(semitones).above(key.tonic());
        var other = (rising ? FALLING : raised).get(semitones).above(key.tonic());
        return isPlain(name) ? name : other;
    }

    /** Whether players read the name without a second thought. */
    private static boolean isPlain(NoteName name) {
        return name.alteration() == 0
                || Stream.of(Letter.values()).noneMatch(letter -> letter.semitones() == name.pitchClass());
    }

    private static List<Degree> degrees(String text) {
        return List.of(text.split(" ")).stream().map(Degree::parse).toList();
    }
}
