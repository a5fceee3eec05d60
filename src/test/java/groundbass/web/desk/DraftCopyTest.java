package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import groundbass.catalog.episode.Episode;
import groundbass.web.Browser;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

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

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    @Test
    void whatAnotherButtonSavedIsNoUnsavedText() {
        var page = desk.editor(written("Kept"));
        Browser.write(page, "Line text", LINE.replace("A5", "A7"));
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("See it as students will"))
                .click(); // before the pause after which it would have been saved
        page.waitForURL("**/preview/**");
        page.goBack();
        DeskVisit.atWork(page);
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("A5", "A7"));
        assertThat(page.locator("#draft-local")).isHidden();
    }

    @Test
    void aCopyIsComparedWithWhatTheServerHasGotSince() {
        var episode = written("Two places");
        var page = desk.editor(episode);
        page.route("**/draft", route -> route.abort());
        Browser.write(page, "Line text", LINE.replace("A5", "A7"));
        assertThat(page.locator("#draft-word")).containsText("the server does not answer");
        String elsewhere = LINE.replace("tempo 96", "tempo 80");
        desk.studio().write(episode, elsewhere);
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
        return desk.studio()
                .writing
                .draft(desk.studio().site.educator(), episode.id())
                .orElseThrow()
                .document()
                .mainLine()
                .text()
                .replace("\r\n", "\n");
    }

    private static Episode written(String title) {
        return desk.written(title, LINE);
    }
}
