package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.store.Instants;
import groundbass.web.Browser;
import groundbass.web.Looks;
import groundbass.web.Site;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The student's pages as a reader sees them; pictures by {@link Looks}. */
@Tag("browser")
class LessonLooksTest {
    static Browser browser;
    static Site site;
    static String session;
    static String desk;
    static String preview;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        site = Site.open();
        preview = "/preview/" + Shelf.fill(site).release(3, "Not out yet.", false);
        desk = site.atTheDesk().getValue();
        session = site.signedIn(new Person.OfStudent(student())).getValue();
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

    @ParameterizedTest
    @CsvSource({
        "/, 390, LIGHT",
        "/, 1280, DARK",
        "/series/quay-exercises, 390, DARK",
        "/series/quay-exercises, 1280, LIGHT",
        "/series/quay-exercises/1, 390, LIGHT",
        "/series/quay-exercises/1, 390, DARK",
        "/series/quay-exercises/1, 1280, LIGHT",
        "/series/quay-exercises/1, 1280, DARK",
        "/sign-in, 390, LIGHT",
        "/sign-in/sent, 1280, DARK",
        "/me, 390, DARK",
        "/me, 1280, LIGHT",
        "/me/delete, 390, LIGHT"
    })
    void pagesFitAndHaveNoBarriers(String path, int width, ColorScheme scheme) {
        var page = browser.page(width, 900, scheme);
        page.context().addCookies(List.of(new Cookie("session", session).setUrl(site.address())));
        var complaints = new ArrayList<String>();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        Browser.open(page, site.address() + path);
        Looks.keep(page, path.equals("/") ? "shelves" : path, width, scheme);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(complaints).as("the browser's own complaints").isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "PREVIEW, 390, LIGHT",
        "PREVIEW, 1280, LIGHT",
        "/desk/account, 390, LIGHT",
        "/desk/account, 1280, DARK",
        "/desk/audit, 390, LIGHT",
        "/desk/audit, 1280, LIGHT",
        "/desk/who-teaches, 390, DARK",
        "/who-teaches, 390, LIGHT",
        "/privacy, 390, LIGHT",
        "/desk/forgotten, 1280, LIGHT",
        "/desk/account/second-factor, 390, LIGHT",
        "/desk/backup, 390, DARK"
    })
    void theEducatorsWayInFitsToo(String named, int width, ColorScheme scheme) {
        String path = named.equals("PREVIEW") ? preview : named;
        var page = browser.page(width, 900, scheme);
        page.context().addCookies(List.of(new Cookie("session", desk).setUrl(site.address())));
        var complaints = new ArrayList<String>();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        Browser.open(page, site.address() + path);
        Looks.keep(page, named, width, scheme);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(complaints).as("the browser's own complaints").isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"390, sheet-narrow", "520, sheet-medium", "799, sheet-medium", "800, sheet-wide", "1280, sheet-wide"})
    void oneOfTheWidthsOfASheetIsShown(int width, String shown) {
        var page = browser.page(width, 900, ColorScheme.LIGHT);
        page.navigate(site.address() + "/series/quay-exercises/1");
        var seen = (List<?>) page.evaluate("() => [...document.querySelectorAll('.sheet-page')]"
                + ".filter(e => e.getBoundingClientRect().height > 0).map(e => e.classList[1])");
        assertThat(seen).hasSize(2).allMatch(shown::equals);
    }

    /** WCAG 2.2, success criterion 2.5.5 (44 by 44 pixels) for what stands alone. */
    @Test
    void whatIsPressedIsLargeEnoughForAThumb() {
        var page = browser.page(390, 900, ColorScheme.LIGHT);
        page.navigate(site.address() + "/series/quay-exercises/1");
        var pressed = page.evaluate("() => [...document.querySelectorAll('.button, button, audio, summary, .walk a')]"
                + ".map(e => [e.getBoundingClientRect().height, e.outerHTML]).filter(([height]) => height > 0)");
        assertThat((List<?>) pressed).isNotEmpty().allSatisfy(each -> {
            var heightAndElement = (List<?>) each;
            assertThat(((Number) heightAndElement.get(0)).doubleValue())
                    .as(heightAndElement.get(1).toString())
                    .isGreaterThanOrEqualTo(44);
        });
    }

    private static StudentId student() {
        var id = StudentId.next();
        site.groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "insert into student (id, email, locale, created_at) values (?, 'eyes@reader.example', 'en', ?)",
                        id.value(),
                        Instants.toColumn(site.clock().instant())));
        return id;
    }
}
