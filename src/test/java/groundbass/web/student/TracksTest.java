package groundbass.web.student;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The recordings of a lesson's page, played by the page's own controls. */
@Tag("browser")
class TracksTest {
    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    @Test
    void aRecordingIsPlayedHeldAndGoneThroughByKeys() {
        var page = open(1280, ColorScheme.LIGHT);
        var player = player(page, 0);
        assertThat(page.locator("audio[controls]")).hasCount(0);
        assertThat(place(player)).isDisabled();
        String name = player.getAttribute("aria-label");
        assertThat(player.getByRole(AriaRole.BUTTON)).hasText("Play");

        go(player).press("Enter");
        assertThat(go(player)).hasText("Pause");
        assertThat(go(player)).hasAttribute("aria-label", "Pause: " + name);
        assertThat(place(player)).isEnabled();
        assertThat(place(player)).hasAttribute("aria-valuetext", Pattern.compile("0:0[0-9] of 0:[0-9]{2}"));
        go(player).press("Enter");
        assertThat(go(player)).hasText("Play");
        place(player).press("Home");
        assertThat(place(player)).hasAttribute("aria-valuetext", Pattern.compile("0:00 of .*"));
        place(player).press("End");
        assertThat(player.locator("[data-part=time]")).hasText(Pattern.compile("(0:[0-9]{2}) of \\1"));
        assertThat(visit.complaints()).isEmpty();
    }

    @Test
    void onlyOneThingOfThePageSounds() {
        var page = open(1280, ColorScheme.LIGHT);
        go(player(page, 0)).click();
        assertThat(go(player(page, 0))).hasText("Pause");
        go(player(page, 1)).click();
        assertThat(go(player(page, 1))).hasText("Pause");
        assertThat(go(player(page, 0))).hasText("Play");
        page.locator(".practice-go").first().click();
        assertThat(page.locator(".practice-go").first()).hasText("Pause");
        assertThat(go(player(page, 1))).hasText("Play");
        go(player(page, 0)).click();
        assertThat(page.locator(".practice-go").first()).hasText("Play");
    }

    @Test
    void oneLoudnessIsForAllOfThem() {
        var page = open(1280, ColorScheme.LIGHT);
        var volumes = page.locator("[data-part=loudness]").getByLabel("Volume");
        volumes.first().fill("30");
        assertThat(volumes.nth(1)).hasValue("30");
        assertThat(page.evaluate("() => [...new Set([...document.querySelectorAll('audio')].map(a => a.volume))]"))
                .isEqualTo(List.of(0.3));
    }

    @Test
    void whatDoesNotArriveIsToldAndCanBeTriedAgain() {
        var page = open(1280, ColorScheme.LIGHT);
        var player = player(page, 0);
        var failed = player.getByText("The recording did not arrive");
        page.route("**/play/**", Route::abort);
        go(player).click();
        assertThat(failed).isVisible();
        assertThat(go(player)).hasText("Play");
        assertThat(player.getByText("open it by itself")).hasAttribute("href", Pattern.compile("/play/"));
        page.unroute("**/play/**");
        go(player).click();
        assertThat(go(player)).hasText("Pause");
        assertThat(failed).isHidden();
    }

    @ParameterizedTest
    @CsvSource({"390, LIGHT", "390, DARK", "1280, LIGHT", "1280, DARK"})
    void playersFitAndHaveNoBarriers(int width, ColorScheme scheme) {
        var page = open(width, scheme);
        go(player(page, 0)).click();
        assertThat(place(player(page, 0))).isEnabled();
        go(player(page, 0)).click();
        Looks.keep(page, "tracks", width, scheme);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        // WCAG 2.2, success criterion 2.5.5 (44 by 44 pixels)
        var small = page.evaluate("() => [...document.querySelectorAll('.player :is(button, input)')]"
                + ".map(e => e.getBoundingClientRect()).filter(box => box.height < 44 || box.width < 44).length");
        assertThat(small).isEqualTo(0);
    }

    private static Page open(int width, ColorScheme scheme) {
        var page = visit.lesson(width, scheme);
        page.locator(".tracks-all > summary").click();
        player(page, 1).waitFor();
        return page;
    }

    private static Locator player(Page page, int number) {
        return page.locator(".player").nth(number);
    }

    private static Locator go(Locator player) {
        return player.locator("[data-part=go]");
    }

    private static Locator place(Locator player) {
        return player.locator("[data-part=place]");
    }
}
