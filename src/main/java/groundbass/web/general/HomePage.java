package groundbass.web.general;

import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.LinkPreview;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The front page: the series, each with what is new in it. */
public final class HomePage implements PageGroup {
    private final Pages pages;
    private final Function<Reader, View> view;

    /** @param view what is out at this moment */
    public HomePage(Pages pages, Function<Reader, View> view) {
        this.pages = pages;
        this.view = view;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/", Role.ANYONE, this::home);
    }

    private void home(Context ctx) {
        pages.show(ctx, "general/home", view.apply(pages.reader(ctx)));
    }

    /**
     * What the template shows.
     *
     * @param lead what the site is, in the reader's language
     * @param making whether lessons are being prepared that will be here in a moment
     */
    public record View(String lead, List<Shelf> shelves, boolean making) implements LinkPreview.Shown {
        @Override
        public LinkPreview preview() {
            return new LinkPreview(lead, false, Optional.empty());
        }
    }

    /** A series with its newest lessons. */
    public record Shelf(
            String title, String path, String language, String summary, int lessons, List<EpisodeCard> newest) {}
}
