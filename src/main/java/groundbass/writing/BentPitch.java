package groundbass.writing;

import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.theory.Spelling;
import java.util.Optional;

/** What a head is bent to, where that is a pitch with a name: by semitones, not by quarter tones (rule: bend-in-staff). */
final class BentPitch {
    private static final int QUARTERS_OF_A_SEMITONE = 2;

    private BentPitch() {}

    /** Of the first of tied heads; of all of them where the string is bent before it is struck. */
    static Optional<Pitch> of(Head head, Key key) {
        return head.note()
                .ornaments()
                .bend()
                .filter(bend -> !head.note().isDead() && (bend.before() || !head.tiedFrom()))
                .filter(bend -> bend.quarters() % QUARTERS_OF_A_SEMITONE == 0)
                .map(bend -> up(head.pitch(), bend.quarters() / QUARTERS_OF_A_SEMITONE, key));
    }

    /** A second, or a third where it is bent farther. */
    private static Pitch up(Pitch pitch, int semitones, Key key) {
        int midi = pitch.midi() + semitones;
        var letter = pitch.name().letter().plus(semitones > 2 ? 2 : 1);
        int alteration = Math.floorMod(midi - letter.semitones() + 6, 12) - 6;
        return Math.abs(alteration) > 1
                ? Spelling.of(key, midi, midi - 1)
                : Pitch.sounding(new NoteName(letter, alteration), midi);
    }
}
