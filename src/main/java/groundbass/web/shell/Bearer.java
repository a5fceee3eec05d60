package groundbass.web.shell;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a program shows in its {@code Authorization} header (RFC 6750 section 2.1), and nowhere else. */
public final class Bearer {
    /** What a token may be made of: a token68 (RFC 9110 section 11.2). */
    public static final String TOKEN = "[A-Za-z0-9._~+/-]+=*";

    /** The scheme's name in any case (RFC 9110 section 11.1). */
    private static final Pattern HEADER = Pattern.compile("(?i:bearer) +(" + TOKEN + ")");

    private Bearer() {}

    /** Empty where a request shows none, or something that is no token. */
    public static Optional<String> of(Context ctx) {
        return Optional.ofNullable(ctx.header("Authorization"))
                .map(String::strip)
                .map(HEADER::matcher)
                .filter(Matcher::matches)
                .map(header -> header.group(1));
    }
}
