package groundbass.remark;

/** How much a remark weighs, the gravest first. */
public enum Severity {
    /** Cannot be read as it is typed. */
    ERROR("error"),
    /** Can be read, but not be played or heard as it is written. */
    IMPOSSIBLE("impossible"),
    /** Can be played by few, or does not do what it says. */
    UNWISE("unwise"),
    /** May well be meant. */
    WORTH_A_LOOK("look");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    /** Stable and short, for programs and the names of styles. */
    public String word() {
        return word;
    }

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return "remark.severity." + word;
    }

    /** Whether nothing can go out as long as it stands. */
    public boolean blocks() {
        return this == ERROR || this == IMPOSSIBLE;
    }
}
