package groundbass.web.student.account;

import groundbass.audience.student.SignIns;
import groundbass.post.EmailAddress;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Remembers for which address a code was asked for, as long as the code is good, so that nobody types it twice. */
public final class AskedCookie {
    private static final String NAME = "asked";
    private static final String PATH = "/sign-in";

    private final boolean secure;

    public AskedCookie(boolean secure) {
        this.secure = secure;
    }

    void keep(Context ctx, EmailAddress email) {
        String value = URLEncoder.encode(email.value(), StandardCharsets.UTF_8);
        ctx.cookie(cookie(value, (int) SignIns.VALID.toSeconds()));
    }

    /** Read as carefully as it was written: anybody may change a cookie. */
    Optional<EmailAddress> email(Context ctx) {
        try {
            return Optional.ofNullable(ctx.cookie(NAME))
                    .map(text -> URLDecoder.decode(text, StandardCharsets.UTF_8))
                    .flatMap(EmailAddress::read);
        } catch (IllegalArgumentException notEncoded) {
            return Optional.empty();
        }
    }

    void forget(Context ctx) {
        ctx.cookie(cookie("", 0));
    }

    private Cookie cookie(String value, int seconds) {
        return new Cookie(NAME, value, PATH, seconds, secure, true, null, SameSite.LAX);
    }
}
