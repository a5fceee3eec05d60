package groundbass.web.shell;

import java.util.Optional;
import org.eclipse.jetty.http.HttpException;

/** Tells a request that could not be read from a fault of ours: libraries wrap what the caller did wrong. */
final class BadRequests {
    private static final int DEEPEST = 8;

    private BadRequests() {}

    static Optional<Integer> status(Throwable thrown) {
        Throwable e = thrown;
        for (int depth = 0; e != null && depth < DEEPEST; depth++) {
            if (e instanceof HttpException bad && bad.getCode() < 500) {
                return Optional.of(bad.getCode());
            }
            e = e.getCause();
        }
        return Optional.empty();
    }
}
