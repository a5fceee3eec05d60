package groundbass.audience.question;

import groundbass.identity.TextValue;

/** What a question is about. */
public enum Topic implements TextValue {
    MUSIC("music"),
    /** That somebody's right may be infringed. */
    RIGHTS("rights");

    private final String value;

    Topic(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
