package groundbass.web.desk.access;

import groundbass.audience.student.BrowserMark;
import groundbass.web.shell.SiteCookie;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Optional;

/** The cookie of a browser in which an educator has signed in: strangers who try the account do not count against it. */
public final class KnownBrowser {
    private static final Duration A_YEAR = Duration.ofDays(365);

    private final BrowserMark marks;
    private final SiteCookie cookie;

    public KnownBrowser(BrowserMark marks, boolean secure) {
        this.marks = marks;
        this.cookie = new SiteCookie("known", "/desk", secure);
    }

    /** The id of this browser, if the account's owner has signed in with it. */
    Optional<String> id(Context ctx, String email) {
        return cookie.read(ctx).flatMap(mark -> marks.read(mark, email));
    }

    void remember(Context ctx, String email) {
        if (id(ctx, email).isEmpty()) {
            cookie.set(ctx, marks.next(email), A_YEAR);
        }
    }
}
