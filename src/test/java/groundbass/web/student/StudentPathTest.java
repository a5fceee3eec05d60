package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.settings.SiteSettings;
import groundbass.post.Outbox;
import groundbass.web.Browser;
import groundbass.web.Site;
import java.io.IOException;
import java.nio.file.Files;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The student's whole way, in a browser, on a site where downloads need a sign-in. */
@Tag("browser")
class StudentPathTest {
    private static final String EMAIL = "player@reader.example";

    private Browser browser;
    private Site site;

    @BeforeEach
    void open() {
        browser = Browser.open();
        site = Site.open();
        Shelf.fill(site);
        var jdbi = site.groundbass().database().jdbi();
        var settings = new SiteSettings("Trial Site", "en", true, ZoneOffset.UTC, Optional.empty());
        jdbi.useTransaction(handle -> new Settings(jdbi, new Audit(jdbi, site.clock())).save(handle, settings));
        site.clock().advance(java.time.Duration.ofSeconds(2));
    }

    @AfterEach
    void close() {
        if (site != null) {
            site.close();
            browser.close();
        }
    }

    @Test
    void fromTheFrontPageToTheListOfWhatWasTaken() throws IOException {
        var page = browser.page();
        page.navigate(site.address());
        press(page, AriaRole.LINK, "Quay & Exercises");
        press(page, AriaRole.LINK, "Second Plank");
        String lesson = page.url();
        press(page, AriaRole.LINK, "Take everything home");
        page.getByLabel("E-mail address").fill(EMAIL);
        press(page, AriaRole.BUTTON, "Send me the link");
        assertThat(page.locator("h1").textContent()).isEqualTo("Look into your mail");
        page.navigate(mailedLink());
        press(page, AriaRole.BUTTON, "Sign me in");
        assertThat(page.url())
                .as("back where the reader was, with what was wanted")
                .startsWith(lesson + "?wanted=");
        assertThat(entriesOfTheBundle(page)).isGreaterThan(5);
        press(page, AriaRole.LINK, "Your downloads");
        var row = page.locator("table.taken tbody tr").first();
        assertThat(row.textContent()).contains("Second Plank", "quay-exercises-02-second-plank.zip");
        assertThat(Browser.barriers(page)).isEmpty();
    }

    private int entriesOfTheBundle(Page page) throws IOException {
        var download = page.waitForDownload(() -> press(page, AriaRole.LINK, "Take everything home"));
        int entries = 0;
        try (var zip = new ZipInputStream(Files.newInputStream(download.path()))) {
            while (zip.getNextEntry() != null) {
                entries++;
            }
        }
        return entries;
    }

    private static void press(Page page, AriaRole role, String name) {
        page.getByRole(role, new GetByRoleOptions().setName(name)).first().click();
    }

    private String mailedLink() {
        var outbox = new Outbox(site.groundbass().database().jdbi(), site.clock());
        return outbox.newest(1)
                .get(0)
                .message()
                .text()
                .lines()
                .filter(line -> line.strip().startsWith(site.address() + "/sign-in/"))
                .findFirst()
                .orElseThrow()
                .strip();
    }
}
