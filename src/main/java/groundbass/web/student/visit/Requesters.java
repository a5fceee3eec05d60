package groundbass.web.student.visit;

import groundbass.audience.download.Requester;
import groundbass.web.gate.Network;
import groundbass.web.shell.Principal;
import io.javalin.http.Context;
import java.util.Optional;

/** Tells statistics who asks. */
public final class Requesters {
    private Requesters() {}

    /** Whoever is signed in to the desk is there on their own business, also where they are signed in as a student too. */
    public static Requester of(Context ctx, Principal principal) {
        if (principal.educator().or(principal::lackingFactor).isPresent()) {
            return new Requester.AtTheDesk();
        }
        String program = Optional.ofNullable(ctx.userAgent()).orElse("");
        return principal
                .student()
                .<Requester>map(Requester.Known::new)
                .orElseGet(() -> new Requester.Anonymous(ctx.ip(), Network.of(ctx), program));
    }
}
