package groundbass.checks;

/** How much a finding weighs, the gravest first. */
public enum Severity {
    /** Cannot be played or heard as it is written. */
    IMPOSSIBLE,
    /** Can be played by few, or does not do what it says. */
    UNWISE,
    /** May well be meant. */
    WORTH_A_LOOK;

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return switch (this) {
            case IMPOSSIBLE -> "checks.severity.impossible";
            case UNWISE -> "checks.severity.unwise";
            case WORTH_A_LOOK -> "checks.severity.look";
        };
    }
}
