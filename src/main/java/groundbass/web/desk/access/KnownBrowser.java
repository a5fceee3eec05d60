package groundbass.web.desk.access;

import groundbass.audience.student.BrowserMark;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;

/** The cookie of a browser in which an educator has signed in: strangers who try the account do not count against it. */
public final class KnownBrowser {
    private static final int A_YEAR = 365 * 24 * 60 * 60;
    private static final String PATH = "/desk";

    private final BrowserMark marks;
    private final boolean secure;
    private final String name;

    public KnownBrowser(BrowserMark marks, boolean secure) {
        this.marks = marks;
        this.secure = secure;
        this.name = secure ? "__Secure-known" : "known"; // RFC 6265bis section 4.1.3.1
    }

    /** The id of this browser, if the account's owner has signed in with it. */
    Optional<String> id(Context ctx, String email) {
        return Optional.ofNullable(ctx.cookie(name)).flatMap(mark -> marks.read(mark, email));
    }

    void remember(Context ctx, String email) {
        if (id(ctx, email).isEmpty()) {
            ctx.cookie(new Cookie(name, marks.next(email), PATH, A_YEAR, secure, true, null, SameSite.LAX));
        }
    }
}
