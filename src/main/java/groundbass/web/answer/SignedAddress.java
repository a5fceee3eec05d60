package groundbass.web.answer;

import groundbass.store.Blobs.Lent;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Sends readers on to the object store, with an address that it takes from anybody for a minute (302, RFC 9110 section
 * 15.4.3). Only who says that they go there is sent on: the policy of a page lets its scripts and players ask nobody else,
 * and not every browser tells those from a reader who follows a link.
 *
 * @param store its origin as readers reach it, which may be another than the servers'
 */
public record SignedAddress(URI store) implements HandOver {
    /** So long there is to begin; what has begun then goes on. */
    static final Duration LIFE = Duration.ofMinutes(1);

    public SignedAddress {
        Objects.requireNonNull(store);
    }

    @Override
    public boolean leadsElsewhere() {
        return true;
    }

    @Override
    public Optional<Instead> instead(Context ctx, FileBody.Stored file, String mediaType, Optional<String> disposition)
            throws IOException {
        // W3C Fetch Metadata; programs and older browsers do not say it, and no browser does to an address without TLS
        if (!"navigate".equals(ctx.header("Sec-Fetch-Mode"))) {
            return Optional.empty();
        }
        return file.blobs()
                .lend(file.sha256(), new Lent(store, mediaType, disposition, LIFE))
                .map(address -> new Instead(
                        HttpStatus.FOUND, Map.of("Location", address.toString(), "Cache-Control", "no-store"), false));
    }
}
