package groundbass.theory;

import java.util.Set;

/**
 * Which name a sounding pitch takes in a key: the scale's own name where it has one, else a raised or lowered degree.
 * Outside notes that rise are sharps, all others flats; the blue notes b3, b5 and b7 stay flats (rule of the engraving
 * handbooks, from memory).
 */
public final class Spelling {
    private static final Set<Integer> BLUE = Set.of(3, 6, 10);

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

    /** Degrees of our modes lie at most a tone apart, so any outside note is one degree raised and another lowered. */
    private static NoteName outside(Key key, int pitchClass, boolean rising) {
        boolean blue = BLUE.contains(Math.floorMod(pitchClass - key.tonic().pitchClass(), 12));
        int alteration = rising && !blue ? 1 : -1;
        return key.scale().stream()
                .map(degree -> new NoteName(degree.letter(), degree.alteration() + alteration))
                .filter(name -> name.pitchClass() == pitchClass)
                .findFirst()
                .orElseThrow();
    }
}
