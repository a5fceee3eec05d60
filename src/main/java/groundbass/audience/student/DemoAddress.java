package groundbass.audience.student;

import groundbass.post.EmailAddress;

/** The addresses of invented students, by which they are told from real ones (RFC 2606 section 2: never a real domain). */
public final class DemoAddress {
    /** Whoever has an address here was invented. */
    public static final String DOMAIN = "demo.invalid";

    private DemoAddress() {}

    public static EmailAddress of(String name) {
        return new EmailAddress(name + "@" + DOMAIN);
    }

    public static boolean isInvented(EmailAddress address) {
        return address.domain().equals(DOMAIN);
    }
}
