package groundbass.audience.news;

import groundbass.identity.TextValue;

/** What a letter of news is about. */
public enum NewsKind implements TextValue {
    /** A lesson came out. */
    LESSON("lesson");

    private final String value;

    NewsKind(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
