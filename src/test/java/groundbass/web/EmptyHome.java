package groundbass.web;

import groundbass.web.general.HomePage;
import groundbass.web.shell.Pages;
import java.util.List;

/** A front page with nothing on it, for tests of what stands around a page. */
public final class EmptyHome {
    private EmptyHome() {}

    public static HomePage of(Pages pages) {
        return new HomePage(pages, reader -> new HomePage.View("Lessons", List.of(), false));
    }
}
