package groundbass.web.desk.publish;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.room.Room;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** The states of a lesson that an educator keeps. */
public final class RevisionPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/revisions";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;

    public RevisionPages(DeskContext desk, Reauthentication reauthentication, EpisodeService writing) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post(PATH, Role.ANYONE, this::keep);
        routes.get(PATH, Role.EDUCATOR, ctx -> back(ctx, desk.episode(ctx)));
    }

    private static void back(Context ctx, Episode episode) {
        ctx.redirect(DeskContext.path(episode) + Room.PUBLISH.way(), HttpStatus.SEE_OTHER);
    }

    private void keep(Context ctx) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var kept = writing.makeRevision(who, episode.id(), FormParameters.text(ctx, "revisionNote"));
            Flash.say(ctx, kept.problems().isEmpty() ? "desk.revision" : "desk.held");
            back(ctx, episode);
        });
    }
}
