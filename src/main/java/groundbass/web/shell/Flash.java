package groundbass.web.shell;

import groundbass.text.Message;
import groundbass.text.Messages;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/**
 * One sentence for the page after a redirect. It travels as a key in a cookie of a minute; what a stranger writes into
 * that cookie can only choose among our own sentences.
 */
public final class Flash {
    private static final String PREFIX = "flash.";
    private static final Duration LASTING = Duration.ofMinutes(1);

    private Flash() {}

    /** Says {@code flash.NAME} on the next page that is shown. */
    public static void say(Context ctx, String name) {
        cookie(ctx).set(ctx, name, LASTING);
    }

    /** Whether something is to be said to whoever asks. */
    static boolean waits(Context ctx) {
        return cookie(ctx).read(ctx).filter(Flash::isSentence).isPresent();
    }

    private static boolean isSentence(String name) {
        return Messages.of(Locale.ENGLISH).has(PREFIX + name);
    }

    static Optional<Message> take(Context ctx) {
        var cookie = cookie(ctx);
        var name = cookie.read(ctx);
        name.ifPresent(n -> cookie.forget(ctx));
        return name.filter(Flash::isSentence).map(n -> Message.of(PREFIX + n));
    }

    private static SiteCookie cookie(Context ctx) {
        return new SiteCookie("flash", Installation.here(ctx).secure());
    }
}
