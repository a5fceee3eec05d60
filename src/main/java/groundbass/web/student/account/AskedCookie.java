package groundbass.web.student.account;

import groundbass.audience.student.SignIns;
import groundbass.post.EmailAddress;
import groundbass.web.shell.SiteCookie;
import io.javalin.http.Context;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Remembers for which address a code was asked for, as long as the code is good, so that nobody types it twice. */
public final class AskedCookie {
    private final SiteCookie cookie;

    public AskedCookie(boolean secure) {
        this.cookie = new SiteCookie("asked", "/sign-in", secure);
    }

    void keep(Context ctx, EmailAddress email) {
        String value = URLEncoder.encode(email.value(), StandardCharsets.UTF_8);
        cookie.set(ctx, value, SignIns.VALID);
    }

    /** Read as carefully as it was written: anybody may change a cookie. */
    Optional<EmailAddress> email(Context ctx) {
        try {
            return cookie.read(ctx)
                    .map(text -> URLDecoder.decode(text, StandardCharsets.UTF_8))
                    .flatMap(EmailAddress::read);
        } catch (IllegalArgumentException notEncoded) {
            return Optional.empty();
        }
    }

    void forget(Context ctx) {
        cookie.forget(ctx);
    }
}
