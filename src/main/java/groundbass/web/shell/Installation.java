package groundbass.web.shell;

import groundbass.web.answer.HandOver;
import io.javalin.http.Context;
import java.net.URI;
import java.util.Objects;
import java.util.Optional;

/**
 * What the operator decided when the server was started.
 *
 * @param publicAddress the site's origin as readers type it, without a path
 * @param named whether the operator gave that address; else it was made up from where the server listens
 * @param hops how many front servers of the operator's own pass a request on and tell the caller's address and scheme
 */
public record Installation(URI publicAddress, boolean named, boolean demo, int hops, Optional<HandOver> handOver) {
    private static final String HERE = "installation";

    public Installation {
        Objects.requireNonNull(handOver);
        if (publicAddress.getScheme() == null || publicAddress.getAuthority() == null) {
            throw new IllegalArgumentException("a public address has a scheme and a host: " + publicAddress);
        }
        if (hops < 0) {
            throw new IllegalArgumentException("no request passes " + hops + " front servers");
        }
    }

    /** A site that is known under that address and asked directly. */
    public static Installation at(URI publicAddress) {
        return new Installation(publicAddress, false, false, 0, Optional.empty());
    }

    public boolean secure() {
        return "https".equals(publicAddress.getScheme());
    }

    /** Lets whatever answers this request know where it is. */
    public void receive(Context ctx) {
        ctx.attribute(HERE, this);
    }

    /** The installation that has received the request. */
    static Installation here(Context ctx) {
        return Objects.requireNonNull(ctx.attribute(HERE));
    }
}
