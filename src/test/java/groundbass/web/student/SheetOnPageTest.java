package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.web.Browser;
import groundbass.web.Site;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a reader does with the sheet on a lesson's page: enlarge it, go through it, print it. */
@Tag("browser")
class SheetOnPageTest {
    private static final String LESSON = "/series/quay-exercises/1";
    private static final String SHOWN = "() => [...document.querySelectorAll('.sheet')][0]"
            + ".querySelector('.sheet-page:not([style])') && [...document.querySelectorAll('.sheet')[0]"
            + ".querySelectorAll('.sheet-page')].filter(e => e.getBoundingClientRect().height > 0)"
            + ".map(e => e.classList[1]).join(' ')";

    static Browser browser;
    static Site site;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        site = Site.open();
        Shelf.fill(site);
    }

    @AfterEach
    void closePages() {
        browser.closePages();
    }

    @AfterAll
    static void close() {
        if (site != null) {
            site.close();
            browser.close();
        }
    }

    private static Page lesson(int width) {
        var page = browser.page(width, 900, ColorScheme.LIGHT);
        page.navigate(site.address() + LESSON);
        return page;
    }

    private static String shown(Page page) {
        return (String) page.evaluate(SHOWN);
    }

    private static String label(Page page) {
        return (String) page.evaluate("() => document.activeElement.getAttribute('aria-label')");
    }

    @ParameterizedTest
    @CsvSource({
        "390, small, sheet-medium",
        "390, large, sheet-fitted",
        "700, large, sheet-narrow",
        "1280, large, sheet-medium",
        "1280, largest, sheet-narrow",
        "1280, small, sheet-wide"
    })
    void largerNotesAreSetAnewInsteadOfScrolled(int width, String size, String shown) {
        var page = lesson(width);
        page.check("#sheet ~ figure input[value=" + size + "]");
        page.waitForFunction("shown => (" + SHOWN + ")() === shown", shown);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
    }

    @Test
    void aSheetThatIsRefusedIsAskedForOnce() {
        var page = lesson(390);
        var sheet = Pattern.compile(".*/both/[0-9]+");
        var asked = new ArrayList<String>();
        page.route(sheet, route -> {
            asked.add(route.request().url());
            route.fulfill(new Route.FulfillOptions().setStatus(503));
        });
        page.waitForResponse(sheet, () -> page.check("#sheet ~ figure input[value=large]"));
        for (int turn = 0; turn < 3; turn++) {
            page.evaluate("() => dispatchEvent(new Event('resize'))");
            page.evaluate("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        }
        assertThat(asked).isNotEmpty().doesNotHaveDuplicates();
    }

    @Test
    void theSizeIsRememberedFromPageToPage() {
        var page = lesson(1280);
        page.check("#sheet ~ figure input[value=largest]");
        page.navigate(site.address() + LESSON);
        assertThat(shown(page)).isEqualTo("sheet-narrow");
    }

    /** WCAG 2.2, success criterion 1.4.4 speaks of text: figures on the strings are read at twelve pixels or more. */
    @ParameterizedTest
    @CsvSource({"360", "520", "800", "1280"})
    void fretsAreLargeEnoughToRead(int width) {
        var page = lesson(width);
        var sizes = page.evaluate("() => [...document.querySelectorAll('.sheet-page svg')]"
                + ".filter(svg => svg.getClientRects().length)"
                + ".map(svg => 1.95 * svg.getScreenCTM().a)");
        assertThat((List<?>) sizes).isNotEmpty().allSatisfy(size -> assertThat(((Number) size).doubleValue())
                .isGreaterThan(12));
    }

    @Test
    void arrowKeysGoFromEventToEvent() {
        var page = lesson(1280);
        page.locator("#sheet ~ figure .sheet-wide g.event").first().focus();
        String first = label(page);
        assertThat(first).startsWith("Bar 1, 1: ").contains("open A string");
        page.keyboard().press("ArrowRight");
        String second = label(page);
        assertThat(second).startsWith("Bar 1, ").isNotEqualTo(first);
        page.keyboard().press("ArrowDown");
        assertThat(label(page)).startsWith("Bar 2, ");
        page.keyboard().press("ArrowUp");
        assertThat(label(page)).isEqualTo(first);
        page.keyboard().press("ArrowLeft");
        assertThat(label(page)).as("the first has none before it").isEqualTo(first);
    }

    /** ARIA Authoring Practices, roving tabindex: one stop for all of it. */
    @Test
    void aDrawingIsOneStopForTheTabKey() {
        var page = lesson(1280);
        var stops = page.evaluate("() => [...document.querySelectorAll('.sheet-wide svg')]"
                + ".map(svg => svg.querySelectorAll('[tabindex=\"0\"]').length)");
        assertThat((List<?>) stops).isNotEmpty().allMatch(Integer.valueOf(1)::equals);
    }

    @Test
    void paperShowsTheSystemsOneByOne() throws IOException {
        var page = lesson(390);
        page.evaluate("() => dispatchEvent(new Event('beforeprint'))");
        byte[] pdf = page.pdf(
                new Page.PdfOptions().setFormat("A4").setPath(Path.of("target", "looks", "lesson-printed.pdf")));
        // the sheet that follows the playing is empty until something plays
        assertThat(inEachSheet(page, ".sheet-printed use"))
                .isEqualTo(inEachSheet(page, ".sheet-wide g.system"))
                .anyMatch(count -> (int) count > 0);
        try (var document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isPositive();
        }
    }

    private static List<?> inEachSheet(Page page, String what) {
        return (List<?>) page.evaluate(
                "what => [...document.querySelectorAll('.sheet')].map(sheet => sheet.querySelectorAll(what).length)",
                what);
    }

    @Test
    void withoutScriptsTheSizeCanStillBeChosen() {
        var page = browser.page(1280, 900, ColorScheme.DARK);
        page.route("**/*.js", route -> route.abort());
        page.navigate(site.address() + LESSON);
        page.check("#sheet ~ figure input[value=large]");
        assertThat(shown(page)).isEqualTo("sheet-medium");
    }
}
