package groundbass.web.program;

import groundbass.catalog.educator.FactorDemand;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramSecret;
import groundbass.catalog.educator.ProgramToken;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.web.shell.Bearer;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells which program sends a request: by the token in its {@code Authorization} header (RFC 6750 section 2.1) and by
 * nothing else. Cookies are not looked at, and a token in an address, where it would be logged, counts for nothing.
 */
final class Callers {
    private static final Logger log = LoggerFactory.getLogger(Callers.class);
    private static final String CHALLENGE = "Bearer realm=\"groundbass\"";

    private final ProgramTokens tokens;
    private final FactorDemand demand;
    private final RateLimits limits;

    Callers(ProgramTokens tokens, FactorDemand demand, RateLimits limits) {
        this.tokens = tokens;
        this.demand = demand;
        this.limits = limits;
    }

    /**
     * The token of a request; refuses with 401 where it brings none that is good, and with 403 where its educator lacks the
     * second factor that the site demands.
     */
    ProgramToken token(Context ctx) {
        // whoever brings nothing is not told what was wrong (RFC 6750 section 3.1)
        String shown = Bearer.of(ctx)
                .orElseThrow(
                        () -> Refusal.challenge(HttpStatus.UNAUTHORIZED, CHALLENGE, "program.refused.token.missing"));
        var token = good(ctx, shown);
        demandFactor(token);
        return token;
    }

    /** Refuses with 403 as long as whoever made the token could not come in at the desk either. */
    private void demandFactor(ProgramToken token) {
        if (demand.lacks(token.educator())) {
            log.warn("token {}: 403, its educator lacks the second factor", token.id());
            throw Refusal.challenge(HttpStatus.FORBIDDEN, CHALLENGE, "program.refused.factor");
        }
    }

    private ProgramToken good(Context ctx, String shown) {
        return ProgramSecret.parse(shown).flatMap(tokens::find).orElseThrow(() -> {
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
