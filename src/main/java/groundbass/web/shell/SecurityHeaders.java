package groundbass.web.shell;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;

/** The headers that every answer carries. */
public final class SecurityHeaders {
    private static final String POLICY = String.join(
            "; ",
            "default-src 'none'",
            "object-src 'none'",
            "script-src 'self'",
            "worker-src 'self'",
            "manifest-src 'self'",
            "style-src 'self'",
            "img-src 'self'",
            "font-src 'self'",
            "media-src 'self'",
            "connect-src 'self'",
            "form-action 'self'",
            "frame-ancestors 'none'",
            "base-uri 'none'");

    private final Map<String, String> headers = new LinkedHashMap<>();

    public SecurityHeaders(Installation installation) {
        // W3C Content Security Policy Level 3
        headers.put("Content-Security-Policy", POLICY);
        // WHATWG Fetch, section "X-Content-Type-Options header"
        headers.put("X-Content-Type-Options", "nosniff");
        // W3C Referrer Policy; own pages may see the path, others see nothing
        headers.put("Referrer-Policy", "same-origin");
        // W3C Permissions Policy; playing along needs none of these
        headers.put("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()");
        // WHATWG HTML, section "Cross-origin opener policies"
        headers.put("Cross-Origin-Opener-Policy", "same-origin");
        // WHATWG Fetch, section "Cross-Origin-Resource-Policy header"
        headers.put("Cross-Origin-Resource-Policy", "same-origin");
        if (installation.secure()) {
            // RFC 6797 HTTP Strict Transport Security; one year
            headers.put("Strict-Transport-Security", "max-age=31536000");
        }
    }

    /** Lets this one answer frame pages of another site, which the visitor has to ask for with a click. */
    public static void allowFrame(Context ctx, String origin) {
        ctx.header("Content-Security-Policy", POLICY + "; frame-src " + origin);
    }

    public void addTo(Context ctx) {
        addTo(ctx::header);
    }

    /** @param header takes each name with its value */
    public void addTo(BiConsumer<String, String> header) {
        headers.forEach(header);
    }
}
