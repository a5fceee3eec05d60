package groundbass.web.program;

import groundbass.web.answer.EntityTag;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/**
 * What a change says that its program has seen (RFC 9110 section 13): no change is made of something else, so that none is
 * lost unseen.
 *
 * @param ifMatch the tags one of which must be the present one
 * @param ifNoneMatch those none of which may be; {@code *} where nothing may be there
 */
record Preconditions(Optional<String> ifMatch, Optional<String> ifNoneMatch) {
    /** Refuses with 428 (RFC 6585 section 3) a change that says nothing of it. */
    static Preconditions of(Context ctx) {
        var said = new Preconditions(
                Optional.ofNullable(ctx.header("If-Match")), Optional.ofNullable(ctx.header("If-None-Match")));
        if (said.ifMatch().isEmpty() && said.ifNoneMatch().isEmpty()) {
            throw Refusal.of(HttpStatus.PRECONDITION_REQUIRED, "program.refused.precondition.missing");
        }
        return said;
    }

    /** @param now the tag of what is there; empty where nothing is */
    boolean hold(Optional<EntityTag> now) {
        boolean matches = ifMatch.isEmpty()
                || now.filter(tag -> tag.matches(ifMatch.get())).isPresent();
        boolean unlike = ifNoneMatch.isEmpty()
                || now.filter(tag -> tag.namedIn(ifNoneMatch)).isEmpty();
        return matches && unlike;
    }

    void demand(Optional<EntityTag> now) {
        if (!hold(now)) {
            throw failed();
        }
    }

    /** Something else is there than the program has seen. */
    static Refusal failed() {
        return Refusal.of(HttpStatus.PRECONDITION_FAILED, "program.refused.precondition");
    }
}
