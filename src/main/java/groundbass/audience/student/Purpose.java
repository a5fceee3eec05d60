package groundbass.audience.student;

import groundbass.identity.TextValue;

/** What a student can agree to; each is asked for on its own. */
public enum Purpose implements TextValue {
    /** Keeping the address and the list of downloads, without which there is no account. */
    ACCOUNT("account"),
    /** That a student is of age, or has a guardian who agrees, where the site asks for it. */
    AGE("age"),
    /** A letter when a new lesson is out. */
    LETTERS("letters");

    private final String value;

    Purpose(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
