package groundbass.analysis;

import groundbass.score.NoteAt;
import groundbass.theory.Approach;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Key;
import groundbass.theory.Pitch;
import java.util.Objects;
import java.util.Optional;

/**
 * A pitched note and what it means.
 *
 * @param degree in the key, 1 to 7, altered against the major scale on its tonic
 * @param chord what holds here; empty where nothing is written, or no chord on purpose
 * @param chordDegree in that chord; empty where it is no tone of it
 * @param approach how it leads to the next pitch, where it does
 */
public record Tone(
        NoteAt at,
        Pitch pitch,
        Key key,
        Optional<Degree> degree,
        Optional<Chord> chord,
        Optional<Degree> chordDegree,
        ToneRole role,
        Optional<Approach> approach) {
    public Tone {
        Objects.requireNonNull(at);
        Objects.requireNonNull(pitch);
        Objects.requireNonNull(key);
        Objects.requireNonNull(degree);
        Objects.requireNonNull(chord);
        Objects.requireNonNull(chordDegree);
        Objects.requireNonNull(role);
        Objects.requireNonNull(approach);
    }

    /** What stands under it as a figure: its degree above the chord's root, without a chord that in the key: {@code b7}. */
    public String figure() {
        return chordDegree
                .or(() -> chord.isPresent() ? Degree.of(chord.get().root(), pitch.name()) : degree)
                .map(Degree::toString)
                .orElse("");
    }
}
