package groundbass.web.program;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramScope;
import groundbass.web.answer.CachedResponse;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;

/** What the interface can do (OpenAPI 3.1), for anybody; and what a token may do, for whoever brings it. */
final class DescriptionOperations implements PageGroup {
    static final String PATH = Door.ROOT + "/openapi.json";

    private static final String RESOURCE = "/groundbass/web/program/openapi.json";

    private final Door door;
    private final Educators educators;
    private final CachedResponse description;

    DescriptionOperations(Door door, Educators educators) {
        this.door = door;
        this.educators = educators;
        this.description = CachedResponse.of(read(), Answers.JSON);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, this::describe);
        routes.get(Door.ROOT, Role.EXEMPT, door.openToAll(this::tellOfToken));
    }

    private void describe(Context ctx) {
        description.send(ctx, CachedResponse.ASK_AGAIN);
    }

    private void tellOfToken(Call call) {
        var token = call.token();
        // RFC 8631 section 4.1
        call.ctx().header("Link", "<" + PATH + ">; rel=\"service-desc\"");
        Answers.show(
                call,
                Members.of("program", token.name())
                        .and("educator", educators.find(call.who()).map(Educator::name))
                        .and(
                                "scopes",
                                token.scopes().stream()
                                        .sorted()
                                        .map(ProgramScope::word)
                                        .toList())
                        .and("expiresAt", token.expiresAt().toString())
                        .map());
    }

    private static byte[] read() {
        try (var in = DescriptionOperations.class.getResourceAsStream(RESOURCE)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
