package groundbass.intake.draft;

import groundbass.theory.Key;
import groundbass.theory.KeyFinding;
import groundbass.theory.KeyProfile;
import groundbass.theory.Mode;
import groundbass.theory.PitchWeights;
import groundbass.theory.PitchWeights.Weighed;
import java.util.List;

/** Which key notes are in, where a file says nothing or only its signature. */
public final class KeyGuess {
    private KeyGuess() {}

    /** The best of all keys. */
    public static Key of(List<DraftNote> notes) {
        return finding(notes).best();
    }

    /**
     * Of the major and the minor key with a signature, the one that the notes fit better.
     *
     * @param fifths at most seven sharps, or flats where negative
     */
    public static Key of(List<DraftNote> notes, int fifths) {
        return finding(notes).candidates().stream()
                .map(KeyFinding.Candidate::key)
                .filter(key -> Math.floorMod(key.fifths() - fifths, 12) == 0)
                .findFirst()
                .flatMap(key -> KeyNames.of(fifths, key.mode()))
                .or(() -> KeyNames.of(fifths, Mode.MAJOR))
                .orElseThrow();
    }

    private static KeyFinding finding(List<DraftNote> notes) {
        var weighed = notes.stream()
                .filter(note -> !note.dead())
                .map(note ->
                        new Weighed(note.midi(), note.end().minus(note.start()).toDouble()))
                .toList();
        return KeyFinding.of(PitchWeights.of(weighed), KeyProfile.KRUMHANSL_KESSLER);
    }
}
