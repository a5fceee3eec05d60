package groundbass.web.shell.limit;

import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.util.Map;

/** Refuses something for a while. The answer names the wait, and keeps what was typed. */
public final class WaitResponse extends HttpResponseException {
    private static final long serialVersionUID = 1L;

    private final Duration wait;

    private WaitResponse(HttpStatus status, String why, Duration wait) {
        super(status.getCode(), why, Map.of());
        this.wait = wait;
    }

    /** The caller asked too often (RFC 6585 section 4). */
    public static WaitResponse tooOften(Duration wait) {
        return new WaitResponse(HttpStatus.TOO_MANY_REQUESTS, HttpStatus.TOO_MANY_REQUESTS.getMessage(), wait);
    }

    /** The same, of what is counted. */
    static WaitResponse tooOften(Limit limit, Duration wait) {
        return new WaitResponse(HttpStatus.TOO_MANY_REQUESTS, "the limit " + limit + " is used up", wait);
    }

    /** The machine has too much to do at this moment (RFC 9110 section 15.6.4). */
    public static WaitResponse busy(Duration wait) {
        return new WaitResponse(HttpStatus.SERVICE_UNAVAILABLE, HttpStatus.SERVICE_UNAVAILABLE.getMessage(), wait);
    }

    /** For {@code Retry-After} (RFC 9110 section 10.2.3): whole seconds, at least one, and never too early. */
    public long seconds() {
        return Math.max(1, wait.plusMillis(999).toSeconds());
    }
}
