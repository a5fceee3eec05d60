package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.settings.SiteSettings;
import groundbass.web.general.AssetFiles;
import groundbass.web.general.GeneralPages;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.view.Assets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pages as a reader sees them; pictures by {@link Looks}. */
@Tag("browser")
class LooksTest {
    static Browser browser;
    static Stage stage;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        stage = Stage.at(
                "http://localhost:8420",
                PrincipalResolver.NONE,
                pages -> List.of(
                        EmptyHome.of(pages),
                        new GeneralPages(pages, () -> SiteSettings.USUAL),
                        new AssetFiles(new Assets()),
                        new TrialPage(pages)::addTo));
    }

    @AfterEach
    void closePages() {
        browser.closePages();
    }

    @AfterAll
    static void close() {
        if (stage != null) {
            stage.close();
            browser.close();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "/, 390, LIGHT", "/, 1280, DARK", "/privacy, 390, DARK", "/privacy, 1280, LIGHT", "/cautions, 1280, DARK",
        "/none, 390, LIGHT", "/trial, 390, LIGHT", "/trial, 390, DARK", "/trial, 1280, LIGHT", "/trial, 1280, DARK"
    })
    void pagesFitAndHaveNoBarriers(String path, int width, ColorScheme scheme) {
        var page = browser.page(width, 900, scheme);
        var complaints = complaints(page);
        page.navigate("http://localhost:" + stage.port() + path);
        Looks.keep(page, path.equals("/") ? "home" : path, width, scheme);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(complaints).as("the browser's own complaints").isEmpty();
    }

    /** WCAG 2.2, success criterion 2.4.1. */
    @Test
    void theFirstTabLeadsPastTheHead() {
        var page = browser.page();
        page.navigate("http://localhost:" + stage.port() + "/privacy");
        page.keyboard().press("Tab");
        page.keyboard().press("Enter");
        assertThat(page.evaluate("() => document.activeElement.id")).isEqualTo("content");
    }

    /** WCAG 2.2, success criterion 2.5.5 (44 by 44 pixels) for what stands alone; links inside sentences are exempt. */
    @Test
    void whatIsPressedIsLargeEnoughForAThumb() {
        var page = browser.page(390, 900, ColorScheme.LIGHT);
        page.navigate("http://localhost:" + stage.port() + "/trial");
        var small = page.evaluate("() => [...document.querySelectorAll("
                + "'.nav a, .footer a, .button, button, input:not([type=checkbox], [type=hidden]), textarea, .walk a, .tick')]"
                + ".filter(e => e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
        assertThat((List<?>) small).isEmpty();
    }

    private static List<String> complaints(Page page) {
        var complaints = new ArrayList<String>();
        page.onConsoleMessage(message -> {
            if (!message.text().contains("404")) {
                complaints.add(message.text());
            }
        });
        page.onPageError(complaints::add);
        return complaints;
    }
}
