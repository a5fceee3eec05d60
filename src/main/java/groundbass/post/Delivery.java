package groundbass.post;

import groundbass.identity.TextValue;

/** How a letter left the outbox. */
public enum Delivery implements TextValue {
    /** Accepted by a mail server; its text is erased here, since it may hold a link that signs somebody in. */
    SENT("sent"),
    /** Laid out for the educator to read, where no mail server is set up. */
    ON_DESK("on desk"),
    /** Given up after too many attempts; the last error is kept. */
    FAILED("failed"),
    /** Refused for good by the mail server (RFC 5321 section 4.2.1: a reply that begins with 5); its words are kept. */
    REFUSED("refused"),
    /** Not sent in time. */
    USELESS("useless");

    private final String value;

    Delivery(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }
}
