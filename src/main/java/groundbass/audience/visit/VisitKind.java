package groundbass.audience.visit;

import groundbass.identity.TextValue;

/** What a visitor of a lesson is counted for, once in 24 hours each; in the order in which it happens. */
public enum VisitKind implements TextValue {
    /** The lesson's page was opened. */
    VIEW("view"),
    /** A student signed in on the way to it. */
    SIGN_IN("sign-in"),
    /** A bar of it sounded to its end. */
    PLAY("play"),
    /** Every bar of its main line did. */
    WHOLE("whole"),
    /** A passage was played to its end and begun again. */
    LOOP("loop"),
    /** A link to a course was followed. */
    COURSE("course");

    private final String value;

    VisitKind(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }

    /** Where the message bundle names it. */
    public String key() {
        return "statistics.visit." + value;
    }
}
