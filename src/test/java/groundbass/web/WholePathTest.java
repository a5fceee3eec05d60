package groundbass.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions.IsVisibleOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The main job from end to end, as its three people do it: an educator sets up the desk, writes a line, is told of a
 * mistake, mends it and publishes; a student signs in by letter and takes the bundle home; the educator sees who took
 * what.
 */
@Tag("browser")
class WholePathTest {
    private static final Browser BROWSER = Browser.open();
    private static final Site SITE = Site.open();
    private static final String STUDENT = "reader@student.example";
    private static final Pattern LINK = Pattern.compile("/sign-in/[A-Za-z0-9_-]{20,}");
    private static final double BUILT_WITHIN_MILLISECONDS = 120_000;
    private static final String WITH_A_MISTAKE = """
            title Slack Water
            key   A minor
            tempo 96

            bar 1 over Am7
            1-2 A0, A33
            3-4 D2 pop, Dx
            """;

    @AfterAll
    static void close() {
        SITE.close();
        BROWSER.close();
    }

    @Test
    void educatorWritesStudentTakesEducatorCounts() throws IOException {
        var educator = BROWSER.page();
        setUp(educator);
        publish(educator);
        demandSignIn(educator);

        var student = BROWSER.page(390, 800, ColorScheme.LIGHT);
        openTheLesson(student);
        signIn(student, educator);
        var bundle = take(student);
        assertThat(names(bundle)).contains("sheet.pdf", "line.mid", "line.txt", "README.txt", "practice/full-100.mp3");

        student.navigate(SITE.address() + "/me");
        assertThat(student.getByRole(AriaRole.MAIN)).containsText("Slack Water");
        fine(student);
        count(educator);
    }

    private static void setUp(Page page) {
        String code = SITE.groundbass().setUpNotice().setUpCode().orElseThrow();
        page.navigate(SITE.address() + "/desk/set-up");
        fine(page);
        page.getByLabel("Set-up code").fill(code);
        page.getByLabel("Your name, or your studio’s").fill("Quay Studio");
        page.getByLabel("E-mail address").fill("desk@quay.example");
        page.getByLabel("Password").fill("four strings and a thumb");
        press(page, "Open the desk");
        assertThat(page).hasURL(SITE.address() + "/desk");
        fine(page);
    }

    private static void publish(Page page) {
        page.getByText("New series").first().click();
        page.getByLabel("Title of the series").fill("Low Tide");
        press(page, "Create the series");
        page.getByLabel("Title of the lesson").fill("Slack Water");
        press(page, "Begin writing");

        page.locator(".stand-text[open]").first().dispatchEvent("pointerenter");
        assertThat(page.locator(".line-text").first()).isVisible(); // the script is there
        Browser.write(page, "Line text", WITH_A_MISTAKE);
        assertThat(page.getByRole(AriaRole.MAIN)).containsText("Fret 33");
        press(page, "Save");
        Browser.write(page, "Line text", WITH_A_MISTAKE.replace("A33", "A3"));
        assertThat(page.getByRole(AriaRole.MAIN)).not().containsText("Fret 33");
        fine(page);

        goOn(page, "sound"); // past the exercises, of which there is none
        page.locator("[name='settings.tempos']").fill("100");
        fine(page);
        for (String room : List.of("notes", "walkthrough", "script", "facts")) {
            goOn(page, room);
            fine(page);
        }
        page.getByLabel("May it be published?").selectOption("own");
        page.getByLabel("Rights line").fill("Own work of Quay Studio.");
        goOn(page, "publish");

        assertThat(page.getByText("Publish now")).hasCount(0); // it would be refused
        sayWhoTeaches(page);
        page.getByLabel("I have read these remarks and let them stand").check(); // the address is this computer's
        press(page, "Publish now");
        assertThat(page.getByText("out since").first())
                .isVisible(new IsVisibleOptions().setTimeout(BUILT_WITHIN_MILLISECONDS));
        page.navigate(page.url()); // as the page itself does once more when everything is done
        fine(page);
    }

    /** Into that room by the key alone; what was typed before is saved on the way. */
    private static void goOn(Page page, String room) {
        while (!page.url().endsWith("/" + room)) {
            String before = page.url();
            page.keyboard().press("Alt+.");
            page.waitForURL(url -> !url.equals(before));
            page.waitForLoadState();
        }
    }

    /** Asked for once, before the first lesson: the remark leads there, and the button back. */
    private static void sayWhoTeaches(Page page) {
        fine(page);
        page.locator("#preflight")
                .getByRole(AriaRole.LINK, new Locator.GetByRoleOptions().setName(Pattern.compile("who teaches here")))
                .click();
        page.getByLabel("Name of who teaches").fill("Quay Studio");
        page.getByLabel("E-mail address for everybody").fill("hello@quay.example");
        press(page, "Save and go back to the lesson");
        assertThat(page.locator("#publish")).isVisible();
        assertThat(page.getByRole(AriaRole.ALERT)).hasCount(0);
    }

    private static void demandSignIn(Page page) {
        page.navigate(SITE.address() + "/desk/settings");
        page.getByRole(AriaRole.CHECKBOX).first().check();
        page.getByRole(AriaRole.MAIN).getByRole(AriaRole.BUTTON).first().click();
        fine(page);
    }

    private static void openTheLesson(Page page) {
        page.navigate(SITE.address() + "/");
        fine(page);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Slack Water"))
                .first()
                .click();
        assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
                .containsText("Slack Water");
        assertThat(page.locator("#sheet ~ figure svg[role=group]:visible")).hasCount(1);
        fine(page);
    }

    /** The letter lies on the desk, since this site has no mail server. */
    private static void signIn(Page student, Page educator) {
        bundleLink(student).click();
        student.getByLabel("E-mail address").fill(STUDENT);
        fine(student);
        press(student, "Send me the link");
        fine(student);
        student.navigate(SITE.address() + link(educator));
        fine(student);
        press(student, "Sign me in");
        assertThat(student.getByRole(AriaRole.MAIN)).not().containsText("Sign me in");
    }

    private static String link(Page educator) {
        educator.navigate(SITE.address() + "/desk/outbox");
        fine(educator);
        educator.getByRole(AriaRole.MAIN).getByRole(AriaRole.LINK).first().click();
        educator.waitForCondition(
                () -> { // the postman comes by every few seconds
                    educator.reload();
                    return letter(educator).find();
                });
        Matcher link = letter(educator);
        assertThat(link.find()).as("a sign-in link in the letter").isTrue();
        return link.group();
    }

    private static Matcher letter(Page educator) {
        return LINK.matcher(educator.getByRole(AriaRole.MAIN).innerText());
    }

    private static Download take(Page page) {
        page.navigate(SITE.address() + "/series/low-tide/1");
        return page.waitForDownload(() -> bundleLink(page).click());
    }

    private static Locator bundleLink(Page page) {
        return page.getByRole(
                        AriaRole.LINK, new Page.GetByRoleOptions().setName(Pattern.compile("^Take everything home")))
                .first();
    }

    /** Without the lesson's own name, which the folder has and each file in it begins with, but for the read-me. */
    private static List<String> names(Download download) throws IOException {
        var names = new ArrayList<String>();
        try (var zip = new ZipInputStream(Files.newInputStream(download.path()))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String lesson = entry.getName().substring(0, entry.getName().indexOf('/'));
                names.add(entry.getName().substring(lesson.length() + 1).replace(lesson + "-", ""));
            }
        }
        return names;
    }

    private static void count(Page page) {
        page.navigate(SITE.address() + "/desk/statistics");
        fine(page);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Slack Water"))
                .first()
                .click();
        assertThat(page.getByRole(AriaRole.MAIN)).containsText(STUDENT);
        assertThat(page.getByRole(AriaRole.MAIN)).containsText("low-tide-01-slack-water.zip");
        fine(page);
    }

    private static void press(Page page, String name) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(name).setExact(true))
                .first()
                .click();
    }

    /** No barrier that the accessibility checker knows (WCAG 2.2 AA), and nothing wider than the window. */
    private static void fine(Page page) {
        assertThat(Browser.barriers(page)).as(page.url()).isEmpty();
        assertThat(Browser.overflow(page)).as(page.url()).isZero();
    }
}
