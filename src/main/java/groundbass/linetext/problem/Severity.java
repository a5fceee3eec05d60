package groundbass.linetext.problem;

/** Whether a problem keeps a line from being published. */
public enum Severity {
    ERROR("error"),
    WARNING("warning");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
