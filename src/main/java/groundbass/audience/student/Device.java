package groundbass.audience.student;

import groundbass.identity.TextValue;
import java.util.Locale;

/** What kind of thing somebody signed in with: enough to tell one's own sessions apart, and no more. */
public enum Device implements TextValue {
    PHONE,
    TABLET,
    COMPUTER,
    PROGRAM,
    UNKNOWN;

    /**
     * As far as a browser says it of itself. Browsers begin with "Mozilla/" and name "Mobile" on a phone (their makers'
     * documentation of the User-Agent header, RFC 9110 section 10.1.5); a tablet that calls itself a computer is taken
     * for one.
     */
    public static Device of(String userAgent) {
        if (userAgent.isBlank()) {
            return UNKNOWN;
        }
        if (!userAgent.startsWith("Mozilla/")) {
            return PROGRAM;
        }
        if (userAgent.contains("iPad") || userAgent.contains("Tablet")) {
            return TABLET;
        }
        if (userAgent.contains("Mobile")) {
            return PHONE;
        }
        return userAgent.contains("Android") ? TABLET : COMPUTER;
    }

    /** The key of its name in the message bundles. */
    public String key() {
        return "audience.device." + value();
    }

    @Override
    public String value() {
        return name().toLowerCase(Locale.ROOT);
    }
}
