package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramSecret;
import groundbass.catalog.educator.ProgramToken;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells which program sends a request: by the token in its {@code Authorization} header (RFC 6750 section 2.1) and by
 * nothing else. Cookies are not looked at, and a token in an address, where it would be logged, counts for nothing.
 */
final class Callers {
    private static final Logger log = LoggerFactory.getLogger(Callers.class);
    private static final String CHALLENGE = "Bearer realm=\"groundbass\"";
    /** The scheme's name in any case (RFC 9110 section 11.1), and a token68 (section 11.2). */
    private static final Pattern BEARER = Pattern.compile("(?i:bearer) +([A-Za-z0-9._~+/-]+=*)");

    private final ProgramTokens tokens;
    private final RateLimits limits;

    Callers(ProgramTokens tokens, RateLimits limits) {
        this.tokens = tokens;
        this.limits = limits;
    }

    /** The token of a request; refuses with 401 where it brings none that is good. */
    ProgramToken token(Context ctx) {
        String sent = ctx.header("Authorization");
        var bearer = BEARER.matcher(sent == null ? "" : sent.strip());
        if (!bearer.matches()) {
            // whoever brings nothing is not told what was wrong (RFC 6750 section 3.1)
            throw Refusal.challenge(HttpStatus.UNAUTHORIZED, CHALLENGE, "program.refused.token.missing");
        }
        return good(ctx, bearer);
    }

    private ProgramToken good(Context ctx, Matcher bearer) {
        return ProgramSecret.parse(bearer.group(1)).flatMap(tokens::find).orElseThrow(() -> {
            limits.demand(ctx, Limit.PROGRAM_REFUSED);
            log.warn("{} {}: 401, a token that is not good", ctx.method(), ctx.path());
            return notGood();
        });
    }

    /** Refuses with 401 a token that is not known, has run out or was withdrawn. */
    static Refusal notGood() {
        return Refusal.challenge(
                HttpStatus.UNAUTHORIZED, CHALLENGE + ", error=\"invalid_token\"", "program.refused.token.wrong");
    }

    /** Refuses with 403 what a token is not for. */
    static void demand(ProgramToken token, ProgramScope scope) {
        if (!token.may(scope)) {
            log.warn("token {}: 403, lacks the scope {}", token.id(), scope.word());
            throw Refusal.challenge(
                    HttpStatus.FORBIDDEN,
                    CHALLENGE + ", error=\"insufficient_scope\", scope=\"" + scope.word() + "\"",
                    "program.refused.scope",
                    scope.word());
        }
    }
}
