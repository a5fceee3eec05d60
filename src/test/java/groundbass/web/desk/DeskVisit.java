package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import groundbass.catalog.episode.Episode;
import groundbass.web.BrowserFixture;
import java.util.List;

/** The browser of an educator who is signed in at the desk of a {@link Studio}. */
final class DeskVisit extends BrowserFixture {
    private static final int USUAL_WIDTH = 1280;

    private Studio studio;

    @Override
    protected void openSite() {
        studio = new Studio();
    }

    @Override
    protected void closeSite() {
        studio.close();
    }

    @Override
    public String address() {
        return studio.site.address();
    }

    Studio studio() {
        return studio;
    }

    /** An episode with that line. */
    Episode written(String title, String line) {
        var episode = studio.episode(title);
        studio.write(episode, line);
        return episode;
    }

    static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }

    /** A fresh window in which the educator is signed in. */
    Page signedIn(int width, ColorScheme scheme) {
        return signedIn(reader(width, scheme), studio.cookie.getValue());
    }

    /** The same where so much time has gone by that the session of the studio has ended. */
    Page signedInAgain(int width, ColorScheme scheme) {
        return signedIn(reader(width, scheme), studio.site.atTheDesk().getValue());
    }

    private Page signedIn(Page page, String session) {
        page.context().addCookies(List.of(new Cookie("session", session).setUrl(address())));
        return page;
    }

    /** The room of an episode's line, with its script at work. */
    Page editor(Episode episode) {
        return editor(episode, USUAL_WIDTH, ColorScheme.LIGHT);
    }

    Page editor(Episode episode, int width, ColorScheme scheme) {
        return editor(signedIn(width, scheme), episode);
    }

    Page editor(Page page, Episode episode) {
        page.navigate(address() + path(episode));
        return atWork(page);
    }

    /** Comes to the text of a line where it is open, and waits until it can be written; on a narrow page it is opened first. */
    static Page atWork(Page page) {
        assertThat(page.locator(".stand").first()).isVisible();
        if (page.locator(".stand-text[open]").count() > 0) {
            page.locator(".stand-text[open]").first().dispatchEvent("pointerenter");
            assertThat(page.locator(".line-text").first()).isVisible();
        }
        return page;
    }
}
