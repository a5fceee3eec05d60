package groundbass.braille;

import groundbass.theory.Key;
import groundbass.theory.Pitch;
import groundbass.writing.Head.Accidental;
import groundbass.writing.Head.Sign;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The accidentals of one voice in one bar. Two voices share the signs of a staff; in braille they are read one after
 * the other, so that a voice repeats what only the other one has said (rule: braille-in-accord). Mutable.
 */
final class VoiceSigns {
    private final Key key;
    private final Map<Integer, Integer> altered = new HashMap<>();

    VoiceSigns(Key key) {
        this.key = key;
    }

    /** The sign that a note needs though it is not printed; what stands before it holds from here on. */
    Optional<Sign> lacking(Pitch pitch, Optional<Accidental> printed) {
        int alteration = pitch.name().alteration();
        var holds = altered.put(pitch.diatonicIndex(), alteration);
        int before = holds == null ? key.alterationOf(pitch.name().letter()) : holds;
        boolean lacks = printed.isEmpty() && before != alteration;
        return lacks ? Optional.of(Sign.of(alteration)) : Optional.empty();
    }
}
