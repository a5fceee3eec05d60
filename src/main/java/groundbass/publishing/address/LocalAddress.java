package groundbass.publishing.address;

import java.net.URI;

/**
 * Tells an address that leads nobody but the machine itself anywhere: the names and numbers of loopback (RFC 6761 section
 * 6.3, RFC 1122 section 3.2.1.3, RFC 4291 section 2.5.3).
 */
public final class LocalAddress {
    private LocalAddress() {}

    public static boolean is(String address) {
        String host = URI.create(address).getHost();
        return host == null || host.equals("0.0.0.0") || isLoopback(host);
    }

    /** @param host a name or a number, one of IPv6 with brackets or without */
    public static boolean isLoopback(String host) {
        return host.equals("localhost")
                || host.endsWith(".localhost")
                || host.startsWith("127.")
                || host.equals("::1")
                || host.equals("[::1]");
    }
}
