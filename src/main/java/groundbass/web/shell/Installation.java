package groundbass.web.shell;

import groundbass.web.answer.HandOver;
import java.net.URI;
import java.util.Objects;
import java.util.Optional;

/**
 * What the operator decided when the server was started. {@code publicAddress} is the site's origin as readers type it,
 * without a path; {@code behindProxy} says that a front server tells the caller's address and scheme in headers.
 */
public record Installation(URI publicAddress, boolean demo, boolean behindProxy, Optional<HandOver> handOver) {
    public Installation {
        Objects.requireNonNull(handOver);
        if (publicAddress.getScheme() == null || publicAddress.getAuthority() == null) {
            throw new IllegalArgumentException("a public address has a scheme and a host: " + publicAddress);
        }
    }

    public boolean secure() {
        return "https".equals(publicAddress.getScheme());
    }
}
