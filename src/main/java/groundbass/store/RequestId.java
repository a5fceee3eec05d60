package groundbass.store;

import java.util.Optional;
import org.slf4j.MDC;

/**
 * The id of the request that a thread answers: every line of the log that comes of it carries the id, every entry of the
 * record, and the page of a fault. Work that no request asked for has none.
 */
public final class RequestId {
    /** Its name in the log's context, which {@code logback.xml} asks for. */
    private static final String KEY = "request";

    private RequestId() {}

    /** Gives this thread a new one, until {@link #end}. */
    public static void begin() {
        MDC.put(KEY, RandomId.guessable()); // each request has one: a secret would cost some microseconds
    }

    public static void end() {
        MDC.remove(KEY);
    }

    public static Optional<String> current() {
        return Optional.ofNullable(MDC.get(KEY));
    }

    /** That of the request, or a new one where there is none, for a fault that is to be found again. */
    public static String ofFault() {
        return current().orElseGet(RandomId::next);
    }
}
