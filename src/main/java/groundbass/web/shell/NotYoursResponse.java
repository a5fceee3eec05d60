package groundbass.web.shell;

import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.Locale;
import java.util.Map;

/** Somebody with a desk asked for what another standing, or a second factor, is needed for (403, RFC 9110 section 15.5.4). */
final class NotYoursResponse extends HttpResponseException {
    private static final long serialVersionUID = 1L;

    private final String needed;

    NotYoursResponse(Role needed) {
        this(needed.name());
    }

    private NotYoursResponse(String needed) {
        super(HttpStatus.FORBIDDEN.getCode(), "needs " + needed, Map.of());
        this.needed = needed;
    }

    static NotYoursResponse lackingFactor() {
        return new NotYoursResponse("FACTOR");
    }

    /** Its words in the message bundles, without {@code .title} and {@code .detail}. */
    String key() {
        return "error.needs-" + needed.toLowerCase(Locale.ROOT);
    }
}
