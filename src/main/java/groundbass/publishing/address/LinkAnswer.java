package groundbass.publishing.address;

import java.time.Instant;
import java.util.Objects;

/**
 * What came of trying a link.
 *
 * @param status of the last answer (RFC 9110 section 15); 0 where none came
 */
public record LinkAnswer(Kind kind, int status, Instant at) {
    private static final int FAULTS = 400;

    /** How it ended. */
    public enum Kind {
        /** A web server answered. */
        ANSWERED,
        /** The address, or one that it leads on to, is no page on the web that everybody can reach; that one was not asked. */
        NOT_PUBLIC,
        /** No server has that name. */
        UNKNOWN,
        /** No answer came, or none that could be read. */
        SILENT,
        /** It was led on from address to address. */
        ENDLESS
    }

    public LinkAnswer {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(at);
    }

    /** Whether somebody was asked at its end. */
    public boolean isTried() {
        return kind != Kind.NOT_PUBLIC;
    }

    /** Whether a page is there. */
    public boolean isThere() {
        return kind == Kind.ANSWERED && status < FAULTS;
    }
}
