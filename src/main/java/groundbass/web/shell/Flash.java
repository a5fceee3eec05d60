package groundbass.web.shell;

import groundbass.text.Message;
import groundbass.text.Messages;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Locale;
import java.util.Optional;

/**
 * One sentence for the page after a redirect. It travels as a key in a cookie of a minute; what a stranger writes into
 * that cookie can only choose among our own sentences.
 */
public final class Flash {
    private static final String COOKIE = "flash";
    private static final String PREFIX = "flash.";
    private static final int SECONDS = 60;

    private Flash() {}

    /** Says {@code flash.NAME} on the next page that is shown. */
    public static void say(Context ctx, String name) {
        ctx.cookie(cookie(ctx, name, SECONDS));
    }

    /** Whether something is to be said to whoever asks. */
    static boolean waits(Context ctx) {
        return Optional.ofNullable(ctx.cookie(COOKIE)).filter(Flash::isSentence).isPresent();
    }

    private static boolean isSentence(String name) {
        return Messages.of(Locale.ENGLISH).has(PREFIX + name);
    }

    static Optional<Message> take(Context ctx) {
        var name = Optional.ofNullable(ctx.cookie(COOKIE));
        name.ifPresent(n -> ctx.cookie(cookie(ctx, "", 0)));
        return name.filter(Flash::isSentence).map(n -> Message.of(PREFIX + n));
    }

    private static Cookie cookie(Context ctx, String value, int seconds) {
        boolean secure = Installation.here(ctx).secure();
        return new Cookie(COOKIE, value, "/", seconds, secure, true, null, SameSite.LAX);
    }
}
