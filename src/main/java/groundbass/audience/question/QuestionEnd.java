package groundbass.audience.question;

import groundbass.identity.TextValue;

/** What became of a question. */
public enum QuestionEnd implements TextValue {
    ANSWERED("answered"),
    /** The lesson is being mended for it. */
    CORRECTED("corrected");

    private final String value;

    QuestionEnd(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
