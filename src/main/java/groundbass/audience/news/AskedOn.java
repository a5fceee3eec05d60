package groundbass.audience.news;

import groundbass.identity.TextValue;

/** Where somebody asked for news; a part of what they agreed to. */
public enum AskedOn implements TextValue {
    /** On the page of the series, by an address that a letter then had to prove. */
    SERIES("series"),
    /** On their own page, signed in and so by an address that was proven before. */
    ACCOUNT("account");

    private final String value;

    AskedOn(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
