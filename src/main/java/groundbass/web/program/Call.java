package groundbass.web.program;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.ProgramToken;
import io.javalin.http.Context;
import java.util.Objects;

/**
 * A request of a program that has proven itself.
 *
 * @param token with which it did
 */
record Call(Context ctx, ProgramToken token) {
    /** Does what a request asks for and answers it. */
    interface Operation {
        void answer(Call call) throws Exception;
    }

    Call {
        Objects.requireNonNull(ctx);
        Objects.requireNonNull(token);
    }

    /** For whom the program works. */
    EducatorId who() {
        return token.educator();
    }
}
