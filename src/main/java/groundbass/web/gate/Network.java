package groundbass.web.gate;

import io.javalin.http.Context;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Where a request comes from, as far as limits tell callers apart: an IPv4 address, or the first 64 bits of an IPv6
 * address, since whoever has one of those has all of them (RFC 6177, RFC 7934 section 4).
 */
public final class Network {
    private static final int PREFIX_BYTES = 8;

    private Network() {}

    public static String of(Context ctx) {
        return of(ctx.ip());
    }

    /** @param address a literal address, with or without brackets and zone */
    static String of(String address) {
        String bare = address.replaceAll("[\\[\\]]|%.*", "");
        if (!bare.contains(":")) {
            return bare;
        }
        try {
            // a literal is read without asking anybody for a name
            var read = InetAddress.getByName(bare);
            return read instanceof Inet6Address ? prefix(read) : read.getHostAddress();
        } catch (UnknownHostException e) {
            return bare;
        }
    }

    private static String prefix(InetAddress address) {
        return HexFormat.of().formatHex(Arrays.copyOf(address.getAddress(), PREFIX_BYTES));
    }
}
