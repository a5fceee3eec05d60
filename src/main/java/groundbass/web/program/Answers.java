package groundbass.web.program;

import groundbass.web.answer.EntityTag;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** How the interface answers where all went well. */
final class Answers {
    static final String JSON = "application/json";
    private static final String OWN = "private, no-cache";

    private Answers() {}

    /** Names what a representation says at this moment. */
    static EntityTag tag(Object value) {
        return EntityTag.ofContent(ProgramJson.write(value));
    }

    /** Shows what there is, with its tag; 304 where the program has it already (RFC 9110 section 13.1.2). */
    static void show(Call call, Object value) {
        show(call, JSON, ProgramJson.write(value));
    }

    static void show(Call call, String mediaType, byte[] body) {
        var ctx = call.ctx();
        var tag = EntityTag.ofContent(body);
        ctx.header("Cache-Control", OWN).header("ETag", tag.toString());
        if (tag.namedIn(Optional.ofNullable(ctx.header("If-None-Match")))) {
            ctx.status(HttpStatus.NOT_MODIFIED);
        } else {
            ctx.contentType(mediaType).result(body);
        }
    }

    /** Shows what there is after a change, with its tag (RFC 5789 section 2.1). */
    static void changed(Call call, Object value) {
        byte[] body = ProgramJson.write(value);
        call.ctx()
                .header("Cache-Control", OWN)
                .header("ETag", EntityTag.ofContent(body).toString())
                .contentType(JSON)
                .result(body);
    }

    /** Tells what came of a request, which nobody keeps. */
    static void tell(Call call, HttpStatus status, Object value) {
        call.ctx()
                .status(status)
                .header("Cache-Control", "no-store")
                .contentType(JSON)
                .result(ProgramJson.write(value));
    }

    static void nothing(Call call) {
        call.ctx().status(HttpStatus.NO_CONTENT).header("Cache-Control", "no-store");
    }
}
