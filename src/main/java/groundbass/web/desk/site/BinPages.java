package groundbass.web.desk.site;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.ThrownAway;
import groundbass.publishing.Bin;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** Drafts that were thrown away, and the way back. */
public final class BinPages implements PageGroup {
    private static final String PATH = "/desk/thrown-away";

    private final DeskContext desk;
    private final Bin bin;

    public BinPages(DeskContext desk, Bin bin) {
        this.desk = desk;
        this.bin = bin;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.EDUCATOR, this::fetchBack);
    }

    private void show(Context ctx) {
        desk.pages().show(ctx, "desk/thrown-away", new View(bin.of(desk.educator(ctx)), Bin.KEPT.toDays()));
    }

    private void fetchBack(Context ctx) {
        var id = EpisodeId.parse(FormParameters.text(ctx, "episode")).orElseThrow(NotFoundResponse::new);
        var outcome = bin.fetchBack(desk.educator(ctx), id);
        if (outcome.result().isEmpty()) {
            throw new NotFoundResponse();
        }
        Flash.say(ctx, "desk.fetched-back");
        ctx.redirect(DeskContext.EPISODE.replace("{id}", id.value()), HttpStatus.SEE_OTHER);
    }

    /** @param days how long each can be fetched back */
    public record View(List<ThrownAway> drafts, long days) {}
}
