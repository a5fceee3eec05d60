package groundbass.performance;

import groundbass.score.Arrival;
import groundbass.score.Technique;
import java.util.Objects;

/** How a note begins. */
public sealed interface Attack {
    /** What struck the string, now or when its sound began. */
    Technique hand();

    /** A new stroke. */
    record Struck(Technique hand) implements Attack {
        public Struck {
            Objects.requireNonNull(hand);
        }
    }

    /** The string sounds on from the note before; the fretting hand changes its pitch. */
    record Continued(Arrival.Kind by, Technique hand) implements Attack {
        public Continued {
            Objects.requireNonNull(by);
            Objects.requireNonNull(hand);
        }
    }
}
