package groundbass.web.shell;

import groundbass.web.answer.HandOver;
import java.net.URI;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/**
 * What the pages must know of the installation. {@code publicAddress} is the site's origin as readers type it, without
 * a path; {@code behindProxy} says that a front server tells the caller's address and scheme in headers.
 */
public record SiteSettings(
        URI publicAddress, ZoneId zone, boolean demo, boolean behindProxy, Optional<HandOver> handOver) {
    public SiteSettings {
        Objects.requireNonNull(zone);
        Objects.requireNonNull(handOver);
        if (publicAddress.getScheme() == null || publicAddress.getAuthority() == null) {
            throw new IllegalArgumentException("a public address has a scheme and a host: " + publicAddress);
        }
    }

    public boolean secure() {
        return "https".equals(publicAddress.getScheme());
    }

    /** The full address of a path of ours, for mails, feeds and QR codes. */
    public URI address(String path) {
        return publicAddress.resolve(path);
    }
}
