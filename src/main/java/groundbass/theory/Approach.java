package groundbass.theory;

import java.util.Optional;

/** How a note leads to the next (rule: approach-notes; common practice). */
public enum Approach {
    CHROMATIC_FROM_BELOW,
    CHROMATIC_FROM_ABOVE,
    SCALE_FROM_BELOW,
    SCALE_FROM_ABOVE,
    /** From its fifth: a fourth up or a fifth down. */
    FROM_FIFTH;

    /** How {@code midi} leads to {@code target} in a key; empty where it is no step and no fifth. */
    public static Optional<Approach> of(Key key, int midi, int target) {
        int rise = target - midi;
        boolean inKey = Scale.of(key.mode()).contains(key.tonic(), midi);
        return switch (rise) {
            case 1 -> Optional.of(inKey ? SCALE_FROM_BELOW : CHROMATIC_FROM_BELOW);
            case -1 -> Optional.of(inKey ? SCALE_FROM_ABOVE : CHROMATIC_FROM_ABOVE);
            case 2 -> inKey ? Optional.of(SCALE_FROM_BELOW) : Optional.empty();
            case -2 -> inKey ? Optional.of(SCALE_FROM_ABOVE) : Optional.empty();
            case 5, -7 -> Optional.of(FROM_FIFTH);
            default -> Optional.empty();
        };
    }

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return switch (this) {
            case CHROMATIC_FROM_BELOW -> "theory.approach.chromatic-below";
            case CHROMATIC_FROM_ABOVE -> "theory.approach.chromatic-above";
            case SCALE_FROM_BELOW -> "theory.approach.scale-below";
            case SCALE_FROM_ABOVE -> "theory.approach.scale-above";
            case FROM_FIFTH -> "theory.approach.fifth";
        };
    }
}
