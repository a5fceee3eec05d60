package groundbass.web.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import groundbass.audience.rollup.RollUps;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The pages as the educator sees them; pictures by {@link Looks}. */
@Tag("browser")
class StatisticsLooksTest {
    static Browser browser;
    static Story story;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        story = new Story();
        story.site.clock().set("2026-02-19T09:00:00Z");
        new RollUps(story.site.groundbass().database().jdbi(), story.site.clock()).pass();
    }

    @AfterEach
    void closePages() {
        browser.closePages();
    }

    @AfterAll
    static void close() {
        if (story != null) {
            story.close();
            browser.close();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "overview, 390, LIGHT",
        "overview, 1280, DARK",
        "episode, 390, DARK",
        "episode, 1280, LIGHT",
        "series, 390, LIGHT",
        "series, 1280, DARK",
        "next, 390, DARK",
        "next, 1280, LIGHT",
        "students, 390, LIGHT",
        "student, 390, LIGHT",
        "student, 1280, DARK"
    })
    void pagesFitAndHaveNoBarriers(String name, int width, ColorScheme scheme) {
        var page = browser.page(width, 900, scheme);
        page.context()
                .setExtraHTTPHeaders(
                        Map.of("Cookie", "session=" + story.site.atTheDesk().getValue()));
        assertThat(page.navigate(story.site.address() + path(name)).status()).isEqualTo(200);
        page.evaluate("() => document.querySelectorAll('details').forEach(one => one.open = true)");
        Looks.keep(page, "statistics-" + name, width, scheme);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
    }

    private static String path(String name) {
        return "/desk/statistics"
                + switch (name) {
                    case "episode" -> "/episodes/" + story.rope.id();
                    case "series" -> "/series/" + story.rope.series();
                    case "next" -> "/next";
                    case "students" -> "/students";
                    case "student" -> "/students/" + story.bert;
                    default -> "";
                };
    }
}
