package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.upload.Upload;
import groundbass.document.BarMap;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The page on which the bars of an own recording are set. */
@Tag("browser")
class BarsTest {
    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    @Test
    void barsAreTappedMovedHeardWithAClickAndKept() {
        var episode = desk.studio().episode("Tapped");
        var upload = Sent.clicks(desk.studio(), episode);
        var page = page(episode, upload, 1280, ColorScheme.LIGHT);
        assertThat(part(page, "kept")).hasText("Proposed, not saved yet.");
        part(page, "rounds").fill("2");
        part(page, "find").click();
        assertThat(part(page, "word")).containsText("Found 4 bars.");
        // two rounds of two bars of two seconds each from second 1, and the end: a click on each beat, half a second
        // apart
        assertThat(part(page, "chosen").locator("option")).hasCount(5);
        assertThat(part(page, "chosen").locator("option").nth(2)).containsText("Bar 1, round 2");
        Looks.keep(page, "bars-found", 1280, ColorScheme.LIGHT);

        part(page, "seek").fill("1.25");
        assertThat(part(page, "tap")).hasText("Bar 1, round 1 begins now");
        part(page, "seek").press("t");
        assertThat(part(page, "chosen")).hasValue("1");
        part(page, "chosen").press("e");
        part(page, "chosen").press("e");
        part(page, "later").click();
        part(page, "click").check();
        part(page, "around").click();
        assertThat(part(page, "play")).hasText("Stop");
        assertThat(part(page, "place")).not().hasText("0:01.2");
        part(page, "play").press("t"); // while it plays
        assertThat(part(page, "word")).containsText("Bar 2, round 1: 0:0");
        part(page, "undo").click();
        part(page, "play").click();
        assertThat(part(page, "play")).hasText("Play");
        double second = Double.parseDouble(
                part(page, "chosen").locator("option").nth(1).innerText().replaceFirst(".*:", ""));

        part(page, "save").click();
        assertThat(part(page, "word")).containsText("Saved.");
        var kept = kept(episode);
        assertThat(kept.bars().get(0)).isEqualTo(new BarMap.Start(1, 1, 1, 1.25));
        assertThat(kept.bars().get(1).seconds()).isEqualTo(second, within(0.0051));
        assertThat(kept.bars().get(1).seconds())
                .isEqualTo(2.99, within(0.04)); // 3 as played, twice earlier, once later
        page.reload();
        assertThat(part(page, "kept")).hasText("These bars are saved.");
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void whatAnotherWindowSavedIsToldAndNothingIsLost() {
        var episode = desk.studio().episode("Two windows");
        var upload = Sent.clicks(desk.studio(), episode);
        var one = page(episode, upload, 360, ColorScheme.DARK);
        var other = page(episode, upload, 1280, ColorScheme.LIGHT);
        part(other, "later").click();
        part(other, "save").click();
        assertThat(part(other, "word")).containsText("Saved.");
        double theirs = kept(episode).bars().get(0).seconds();

        part(one, "earlier").click();
        part(one, "save").click();
        assertThat(part(one, "word")).containsText("Another window, or a colleague, saved other bars");
        Looks.keep(one, "bars-conflict", 360, ColorScheme.DARK);
        assertThat(Browser.overflow(one)).isZero();
        assertThat(Browser.barriers(one)).isEmpty();
        assertThat(kept(episode).bars().get(0).seconds()).isEqualTo(theirs);
        part(one, "save").click();
        assertThat(part(one, "word")).containsText("Saved.");
        assertThat(kept(episode).bars().get(0).seconds()).isEqualTo(theirs - 0.02, within(0.001));

        part(one, "seek").fill("1.25");
        part(one, "seek").press("t");
        part(one, "seek").press("t");
        part(one, "save").click();
        assertThat(part(one, "word")).containsText("Bar 2 does not begin after “Bar 1”");
        part(one, "undo").click();
        part(one, "save").click();
        assertThat(part(one, "word")).containsText("Saved.");
    }

    /** Slowed to half, a click stands twice as far behind the beginning of the stretch. */
    @Test
    @SuppressWarnings("unchecked")
    void clicksSoundExactlyWhereBarsBegin() {
        var episode = desk.studio().episode("Clicks");
        var page = page(episode, Sent.clicks(desk.studio(), episode), 1280, ColorScheme.LIGHT);
        var found = (List<Number>) page.evaluate("""
                async () => {
                  const { Clicks } = await import('/assets/parts.js');
                  const context = new OfflineAudioContext(1, 48000, 48000);
                  const sound = await new Clicks(() => [0.5, 1.25, 3]).under(context, [], 1, 3, 0.5);
                  const samples = sound.getChannelData(0);
                  const first = samples.findIndex((sample) => sample !== 0);
                  const last = samples.findLastIndex((sample) => sample !== 0);
                  return [sound.duration, first / 48000, last / 48000];
                }""");
        assertThat(found.get(0).doubleValue()).isEqualTo(4.0);
        assertThat(found.get(1).doubleValue()).isEqualTo(0.5, within(0.0001));
        assertThat(found.get(2).doubleValue()).as("one click and no more").isBetween(0.5, 0.57);
    }

    private static Locator part(Page page, String name) {
        return page.locator("#bars [data-part=" + name + "]");
    }

    private Page page(Episode episode, Upload upload, int width, ColorScheme scheme) {
        var page = desk.signedIn(width, scheme);
        page.navigate(desk.address() + Sent.path(episode, upload));
        part(page, "chosen")
                .locator("option")
                .first()
                .waitFor(new Locator.WaitForOptions()
                        .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED));
        return page;
    }

    private static BarMap kept(Episode episode) {
        return desk.studio()
                .writing
                .draft(desk.studio().site.educator(), episode.id())
                .orElseThrow()
                .document()
                .backingTracks()
                .get(0)
                .map();
    }
}
