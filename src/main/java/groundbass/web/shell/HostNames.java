package groundbass.web.shell;

import groundbass.catalog.settings.SiteSettings;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.net.URI;
import java.util.Map;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * Refuses requests for another site: somebody else's name may be made to lead here, and a page under it would then count
 * as one of ours. Holds where the operator or the educator has said what the site is called; addresses without a name,
 * and this machine's own, lead nobody astray.
 */
public final class HostNames {
    static final int MISDIRECTED = 421; // RFC 9110 section 15.5.20
    private static final Pattern BARE =
            Pattern.compile("(localhost|[0-9]{1,3}(\\.[0-9]{1,3}){3}|\\[[0-9a-fA-F:.]+])(:[0-9]{1,5})?");

    private final Installation installation;
    private final Supplier<SiteSettings> settings;

    public HostNames(Installation installation, Supplier<SiteSettings> settings) {
        this.installation = installation;
        this.settings = settings;
    }

    public void check(Context ctx) {
        var chosen = settings.get().publicAddress();
        boolean known = installation.named() || chosen.isPresent();
        if (known && !isOurs(host(ctx), chosen.orElse(installation.publicAddress()))) {
            throw new HttpResponseException(MISDIRECTED, "another host name", Map.of());
        }
    }

    private boolean isOurs(String host, URI chosen) {
        return host.isEmpty()
                || isBare(host)
                || host.equalsIgnoreCase(installation.publicAddress().getAuthority())
                || host.equalsIgnoreCase(chosen.getAuthority());
    }

    /** Whether a host is one of the machine itself, by its number or as {@code localhost}, which nobody types who reads a site. */
    static boolean isBare(String host) {
        return BARE.matcher(host).matches();
    }

    private static String host(Context ctx) {
        String host = ctx.header("Host");
        return host == null ? "" : host.strip();
    }
}
