package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.util.Set;

/**
 * Refuses a state change that another site makes a browser send. No token is needed, so that pages can be kept and
 * shared. Uses {@code Sec-Fetch-Site} (W3C Fetch Metadata), else {@code Origin} (RFC 6454 section 7).
 */
public final class SameOrigin {
    private static final Set<HandlerType> SAFE = Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);

    private final URI publicAddress;
    private final boolean secure;

    public SameOrigin(Installation installation) {
        this.publicAddress = installation.publicAddress();
        this.secure = installation.secure();
    }

    public void check(Context ctx) {
        boolean asked = !SAFE.contains(ctx.method()) && !ctx.routeRoles().contains(Role.EXEMPT);
        if (asked && !sameOrigin(ctx)) {
            throw new ForbiddenResponse("sent by no page of this site");
        }
    }

    private boolean sameOrigin(Context ctx) {
        String site = ctx.header("Sec-Fetch-Site");
        if (site != null) {
            return site.equals("same-origin");
        }
        String origin = ctx.header("Origin");
        return origin != null && (origin.equals(ownOrigin()) || isTyped(origin, String.valueOf(ctx.header("Host"))));
    }

    /**
     * Whether it is the address that was typed to get here without encryption: this machine's, or any where the site has
     * none. A page that came unencrypted under the name of an encrypted site may be anybody's.
     */
    private boolean isTyped(String origin, String host) {
        return origin.equals("http://" + host) && (!secure || HostNames.isBare(host));
    }

    private String ownOrigin() {
        return publicAddress.getScheme() + "://" + publicAddress.getAuthority();
    }
}
