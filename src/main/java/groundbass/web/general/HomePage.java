package groundbass.web.general;

import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.EpisodeCard;
import io.javalin.http.Context;
import java.util.List;
import java.util.function.Supplier;

/** The front page: what is new. */
public final class HomePage implements PageGroup {
    private final Pages pages;
    private final Supplier<List<EpisodeCard>> newest;

    /** @param newest the published episodes to show, newest first */
    public HomePage(Pages pages, Supplier<List<EpisodeCard>> newest) {
        this.pages = pages;
        this.newest = newest;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/", Role.ANYONE, this::home);
    }

    private void home(Context ctx) {
        pages.show(ctx, "general/home", new View(newest.get()));
    }

    /** What the template shows. */
    public record View(List<EpisodeCard> episodes) {}
}
