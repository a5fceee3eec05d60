package groundbass.web.shell;

import groundbass.store.fault.Causes;
import io.javalin.http.HttpStatus;
import java.io.EOFException;
import java.nio.channels.ClosedChannelException;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.HttpException;

/** Tells a request that could not be read from a fault of ours: libraries wrap what the caller did wrong. */
final class BadRequests {
    private BadRequests() {}

    /** The status that tells the caller, if it was the caller. */
    static Optional<Integer> status(Throwable thrown) {
        var causes = Causes.of(thrown).toList();
        if (causes.stream().anyMatch(BadRequests::tooLarge)) {
            return Optional.of(HttpStatus.CONTENT_TOO_LARGE.getCode());
        }
        if (causes.stream().anyMatch(BadRequests::cutOff)) {
            return Optional.of(HttpStatus.REQUEST_TIMEOUT.getCode());
        }
        return causes.stream().anyMatch(BadRequests::unknownCharset)
                ? Optional.of(HttpStatus.UNSUPPORTED_MEDIA_TYPE.getCode())
                : refusal(causes);
    }

    private static Optional<Integer> refusal(List<Throwable> causes) {
        return causes.stream()
                .filter(e -> e instanceof HttpException)
                .map(e -> ((HttpException) e).getCode())
                .filter(code -> code < HttpStatus.INTERNAL_SERVER_ERROR.getCode())
                .findFirst();
    }

    /** Nothing of ours asks for a character set by a name that comes from outside. */
    private static boolean unknownCharset(Throwable e) {
        return e instanceof UnsupportedCharsetException || e instanceof IllegalCharsetNameException;
    }

    /** Whoever sent it is gone, or was cut off for being too slow; nobody is left to be told. */
    private static boolean cutOff(Throwable e) {
        return e instanceof TimeoutException || e instanceof EOFException || e instanceof ClosedChannelException;
    }

    /** Jetty has no type for an upload beyond its limits, only these words. */
    private static boolean tooLarge(Throwable e) {
        return e instanceof IllegalStateException
                && String.valueOf(e.getMessage()).matches("max \\w+( \\w+)? exceeded.*");
    }
}
