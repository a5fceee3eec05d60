package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.episode.Episode;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The desk keeps its word: a line is written, seen as students will, promised for an hour and written on; the desk says what
 * differs and shows what goes out; and that is what students find at the hour.
 */
@Tag("browser")
class PromisedPathTest {
    private static final double TWO_MINUTES = 120_000;
    private static final String LATER = Studio.LINE.replace("A5*2, E5, A5", "A5*2, E5, A7");

    /** Ten in Vienna is nine in universal time in winter (IANA time zone database); the site begins at nine. */
    private static final String HOUR = "2026-02-02T11:00";

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    /** What a lesson's page says and gives. */
    private record Shown(String sheet, String walkthrough, List<String> files) {}

    @Test
    void whatGoesOutIsWhatTheDeskSaidWouldGoOut() {
        var episode = desk.studio().episode("Slack Water");
        desk.studio().write(episode, "bar 1\n1-4 E5\n"); // settles the rights, and few tracks
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        write(page, episode, Studio.LINE);
        var first = preview(page);
        promise(page, episode);
        write(page, episode, LATER);
        room(page, episode, "publish");
        assertThat(page.locator("#calendar .note")).containsText("bar 1: count 1a (pitch)");
        var last = preview(page);
        assertThat(last).isNotEqualTo(first);
        desk.studio().site.clock().advance(Duration.ofHours(1));
        waitUntilItIsOut(page, episode);

        var student = desk.reader(390, ColorScheme.LIGHT);
        student.navigate(desk.address() + "/series/" + desk.studio().series.slug() + "/" + episode.number());
        assertThat(shown(student)).isEqualTo(last);
        room(page, episode, "publish");
        assertThat(page.locator("#calendar .note")).hasCount(0);
        assertThat(desk.complaints()).isEmpty();
    }

    private static void room(Page page, Episode episode, String room) {
        page.navigate(desk.address() + DeskVisit.path(episode) + "/" + room);
    }

    private static void write(Page page, Episode episode, String line) {
        room(page, episode, "line");
        DeskVisit.atWork(page);
        page.getByLabel("Line text", new Page.GetByLabelOptions().setExact(true))
                .focus();
        page.keyboard().press("Control+a");
        page.keyboard().press("Delete"); // what is typed over marked text takes a style along, which the policy forbids
        page.keyboard().insertText(line);
        assertThat(page.locator("#live-said")).hasText("No mistakes");
        assertThat(page.locator("#draft-word")).hasText("All saved");
    }

    private static Shown preview(Page page) {
        press(page, "See it as students will");
        page.waitForURL("**/preview/**");
        assertThat(page.locator("article.episode"))
                .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(TWO_MINUTES));
        return shown(page);
    }

    private static void promise(Page page, Episode episode) {
        room(page, episode, "publish");
        page.fill("#local", HOUR);
        page.click("#hour-zone summary");
        page.fill("#zone", "Europe/Vienna");
        press(page, "Promise this hour");
        assertThat(page.locator("#calendar .standing")).containsText("Promised for");
    }

    /** The calendar comes round every few seconds. */
    private static void waitUntilItIsOut(Page page, Episode episode) {
        page.waitForCondition(
                () -> {
                    room(page, episode, "publish");
                    return page.locator("#calendar .standing").innerText().contains("Out since");
                },
                new Page.WaitForConditionOptions().setTimeout(TWO_MINUTES));
    }

    private static Shown shown(Page page) {
        String walkthrough = String.valueOf(
                page.locator("section[aria-labelledby=walkthrough]").evaluate("""
                        section => [...section.querySelectorAll('li')].map(step => {
                          const said = step.cloneNode(true);
                          said.querySelectorAll('a, button').forEach(added => added.remove()); // by a script, sooner or later
                          return [...said.childNodes].find(node => node.textContent.trim()).textContent.trim();
                        }).join('\\n')"""));
        assertThat(walkthrough).contains("fret");
        var files = page.locator("a[href*='/files/']").all().stream()
                .map(link -> (String) link.evaluate("a => a.href"))
                .filter(address -> address.endsWith("/sheet.pdf") || address.endsWith("/line.txt"))
                .distinct()
                .sorted()
                .map(address -> digest(page, address))
                .toList();
        assertThat(files).hasSize(2);
        return new Shown(notes(page.locator("#sheet ~ figure svg[role=group]")), walkthrough, files);
    }

    /** Every event with its bar and count, in whichever of its two widths the sheet is shown. */
    private static String notes(Locator sheets) {
        return String.valueOf(sheets.first()
                .evaluate("svg => [...svg.querySelectorAll('[data-bar]')]"
                        + ".map(event => `${event.dataset.bar} ${event.dataset.at} ${event.getAttribute('aria-label')}`)"
                        + ".join('\\n')"));
    }

    private static String digest(Page page, String address) {
        return String.valueOf(page.evaluate(
                "async address => { const bytes = await (await fetch(address)).arrayBuffer();"
                        + " const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));"
                        + " return bytes.byteLength + ' ' + digest.join(' '); }",
                address));
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .first()
                .click();
    }
}
