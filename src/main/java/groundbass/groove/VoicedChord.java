package groundbass.groove;

import groundbass.performance.When;
import java.util.Objects;

/** A chord as it is played: which keys, when and how loud. */
public record VoicedChord(Voicing voicing, When when, int velocity) {
    public VoicedChord {
        Objects.requireNonNull(voicing);
        Objects.requireNonNull(when);
    }
}
