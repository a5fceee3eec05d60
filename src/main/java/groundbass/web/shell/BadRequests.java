package groundbass.web.shell;

import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.jetty.http.HttpException;

/** Tells a request that could not be read from a fault of ours: libraries wrap what the caller did wrong. */
final class BadRequests {
    private static final int DEEPEST = 8;

    private BadRequests() {}

    /** The status that tells the caller, if it was the caller. */
    static Optional<Integer> status(Throwable thrown) {
        var causes = Stream.iterate(thrown, e -> e != null, Throwable::getCause)
                .limit(DEEPEST)
                .toList();
        return causes.stream().anyMatch(BadRequests::tooLarge)
                ? Optional.of(HttpStatus.CONTENT_TOO_LARGE.getCode())
                : refusal(causes);
    }

    private static Optional<Integer> refusal(List<Throwable> causes) {
        return causes.stream()
                .filter(e -> e instanceof HttpException)
                .map(e -> ((HttpException) e).getCode())
                .filter(code -> code < HttpStatus.INTERNAL_SERVER_ERROR.getCode())
                .findFirst();
    }

    /** Jetty has no type for an upload beyond its limits, only these words. */
    private static boolean tooLarge(Throwable e) {
        return e instanceof IllegalStateException
                && String.valueOf(e.getMessage()).matches("max \\w+( \\w+)? exceeded.*");
    }
}
