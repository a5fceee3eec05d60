package groundbass.checks.level;

import groundbass.text.Message;
import java.util.Objects;

/**
 * One thing that makes a line hard.
 *
 * @param weight how much it counts; about 1 for what a beginner has to learn first
 * @param reason the measured figure in words
 */
public record Demand(Kind kind, double weight, Message reason) {
    /** What is measured. */
    public enum Kind {
        SPEED,
        SHIFTS,
        SYNCOPATION,
        TECHNIQUES,
        METER,
        DIVISION,
        CHORDS,
        HARMONY
    }

    public Demand {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(reason);
    }
}
