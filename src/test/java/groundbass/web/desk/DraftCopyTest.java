package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import groundbass.catalog.episode.Episode;
import groundbass.web.Browser;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The copy that a browser keeps of what it typed: offered only where the server never got it, and compared before it is put back. */
@Tag("browser")
class DraftCopyTest {
    private static final String LINE = """
            tempo 96

            bar 1
            1-4  E5

            bar 2
            1-4  A5
            """;

    private static Browser browser;
    private static Studio studio;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        studio = new Studio();
    }

    @AfterAll
    static void close() {
        if (studio != null) {
            studio.close();
            browser.close();
        }
    }

    @Test
    void whatAnotherButtonSavedIsNoUnsavedText() {
        var page = at(written("Kept"));
        Browser.write(page, "Line text", LINE.replace("A5", "A7"));
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep as a revision"))
                .click(); // before the pause after which it would have been saved
        assertThat(page.locator(".line-text").first()).isVisible();
        page.reload();
        assertThat(page.locator(".line-text").first()).isVisible();
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("A5", "A7"));
        assertThat(page.locator("#draft-local")).isHidden();
    }

    @Test
    void aCopyIsComparedWithWhatTheServerHasGotSince() {
        var episode = written("Two places");
        var page = at(episode);
        page.route("**/draft", route -> route.abort());
        Browser.write(page, "Line text", LINE.replace("A5", "A7"));
        assertThat(page.locator("#draft-word")).containsText("the server does not answer");
        String elsewhere = LINE.replace("tempo 96", "tempo 80");
        EpisodePagesTest.typed(studio.form(), 1, elsewhere).post("/desk/episodes/" + episode.id());
        page.onDialog(dialog -> dialog.accept()); // leaving asks
        page.reload();
        page.unroute("**/draft");
        assertThat(page.locator("#mainLine")).hasValue(elsewhere);
        page.getByText("Put it back").click();

        var conflict = page.locator("#draft-conflict");
        assertThat(conflict).isVisible();
        assertThat(conflict).containsText("tempo 80");
        assertThat(stored(episode)).as("nothing is stored before it is settled").isEqualTo(elsewhere);
        conflict.getByText("Keep this and save").click(); // what clashed with nothing is kept from either side
        assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(stored(episode)).isEqualTo(elsewhere.replace("A5", "A7"));
    }

    private static String stored(Episode episode) {
        return studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document()
                .mainLine()
                .text()
                .replace("\r\n", "\n");
    }

    private static Episode written(String title) {
        var episode = studio.episode(title);
        EpisodePagesTest.typed(studio.form(), 0, LINE).post("/desk/episodes/" + episode.id());
        return episode;
    }

    private static Page at(Episode episode) {
        var page = browser.page(1280, 900, ColorScheme.LIGHT);
        page.context()
                .addCookies(List.of(new Cookie("session", studio.cookie.getValue()).setUrl(studio.site.address())));
        page.navigate(studio.site.address() + "/desk/episodes/" + episode.id());
        assertThat(page.locator(".line-text").first()).isVisible();
        return page;
    }
}
