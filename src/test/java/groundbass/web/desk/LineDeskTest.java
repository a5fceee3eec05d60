package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.InstanceOfAssertFactories.LIST;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.episode.Episode;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Writing a line on its sheet, as an educator's browser does it. */
@Tag("browser")
class LineDeskTest {
    private static final String LINE = """
            # the groove
            key     A dorian
            tempo   96

            bar 1 over Am7   # slowly at first
            1    E5
            1&   E5, E8
            2    A5, Ax
            3-4  D4+G5 pluck

            bar 2 = bar 1
            4    A5
            """;

    private static final String TWO_BARS = "bar 1\n1-4  E5\n\nbar 2\n1-4  A5\n";

    /** The names of what a page fetched. */
    private static final String FETCHED = """
            () => performance.getEntriesByType("resource").map((one) => new URL(one.name).pathname.split("/").at(-1))""";

    /** The bytes of a page and all that it fetched. */
    private static final String WEIGHT = """
            () => ["navigation", "resource"].flatMap((kind) => performance.getEntriesByType(kind))
              .reduce((sum, one) => sum + one.encodedBodySize, 0)""";

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    @Test
    void theStripWritesOneCountAndTheTextFollows() {
        var episode = written("Strip");
        var page = desk.editor(episode);
        page.locator("[data-bar-spot='1']").click();
        var second = page.getByLabel("Bar 1, count 1&", exactly());
        second.fill("E7, E8 hammer");
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("1&   E5, E8", "1&   E7, E8 hammer"));

        second.press("Tab");
        assertThat(page.getByLabel("Bar 1, count 2", exactly())).isFocused();
        page.keyboard().press("Shift+Enter");
        assertThat(page.getByLabel("Bar 1, count 2&")).isFocused();
        String split = LINE.replace("1&   E5, E8", "1&   E7, E8 hammer").replace("2    A5, Ax", "2    A5\n2&   Ax");
        assertThat(page.locator("#mainLine")).hasValue(split);
        page.keyboard().press("Control+z");
        page.keyboard().press("Control+z");
        assertThat(page.locator("#mainLine")).hasValue(LINE);
        assertThat(desk.complaints()).isEmpty();
    }

    /** An answer that arrives after the next key speaks of a text that is gone. */
    @Test
    void aLateAnswerTakesNothingBackThatWasTyped() {
        var page = desk.editor(written("Late"));
        page.locator("[data-bar-spot='1']").click();
        var count = page.getByLabel("Bar 1, count 1", exactly());
        page.evaluate("""
                () => {
                  const ask = fetch;
                  window.fetch = async (address, request) => {
                    const answer = await ask(address, request);
                    if (String(address).endsWith("/live") && !window.letGo) {
                      await new Promise((go) => window.letGo = go);
                    }
                    return answer;
                  };
                  addEventListener("input", () => window.letGo?.());
                }""");
        count.press("Control+a");
        page.keyboard().type("A");
        page.waitForCondition(() -> (Boolean) page.evaluate("() => Boolean(window.letGo)"));
        page.keyboard().type("7");
        assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(count).hasValue("A7");
        page.keyboard().type(" f");
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("1    E5", "1    A7 f"));
        assertThat(desk.complaints()).isEmpty();
    }

    /** The first key is asked about at once, and all that is typed until its answer comes together after it. */
    @Test
    void oneAnswerIsOnItsWayAtATime() {
        var page = desk.editor(written("At once"));
        page.locator("[data-bar-spot='1']").click();
        var count = page.getByLabel("Bar 1, count 1", exactly());
        page.evaluate("""
                () => {
                  const ask = fetch;
                  window.askedFor = [];
                  window.fetch = async (address, request) => {
                    if (String(address).endsWith("/live")) {
                      window.askedFor.push(request.body.get("text"));
                      if (window.askedFor.length === 1) await new Promise((go) => window.letGo = go);
                    }
                    return ask(address, request);
                  };
                }""");
        count.press("Control+a");
        page.keyboard().type("A7");
        page.keyboard().type(" slap");
        page.waitForCondition(() -> (Boolean) page.evaluate("() => Boolean(window.letGo)"));
        assertThat(page.evaluate("() => window.askedFor.length")).isEqualTo(1);
        page.evaluate("() => window.letGo()");
        page.waitForCondition(
                () -> page.evaluate("() => window.askedFor.length").equals(2));
        assertThat(page.evaluate("() => window.askedFor"))
                .isEqualTo(List.of(LINE.replace("1    E5", "1    A"), LINE.replace("1    E5", "1    A7 slap")));
        assertThat(page.locator("[data-part=sheet] svg").first()).containsText("T");
        assertThat(desk.complaints()).isEmpty();
    }

    /** One can write by the strip alone; what is written so can be undone, also after the next visit. */
    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void theEditorIsFetchedOnceSomebodyWantsIt(int width) {
        var episode = written("At " + width);
        var page = desk.signedIn(width, ColorScheme.LIGHT);
        page.setExtraHTTPHeaders(Map.of("Accept-Encoding", "gzip"));
        page.navigate(desk.address() + DeskVisit.path(episode) + "/line");
        assertThat(page.locator(".stand").first()).isVisible();
        page.locator("[data-bar-spot='1']").click();
        page.getByLabel("Bar 1, count 1", exactly()).fill("E7");
        assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(page.evaluate(FETCHED)).asInstanceOf(LIST).isNotEmpty().doesNotContain("line-editor.js");
        assertThat(((Number) page.evaluate(WEIGHT)).intValue()).isBetween(10_000, 150_000);

        page.reload();
        assertThat(page.locator(".stand").first()).isVisible();
        page.keyboard().press("Control+z");
        assertThat(page.locator("#mainLine")).hasValue(LINE);
        assertThat(page.evaluate(FETCHED)).asInstanceOf(LIST).contains("line-editor.js");
        page.keyboard().press("Control+y");
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("1    E5", "1    E7"));
        if (page.locator(".stand-text[open]").count() == 0) {
            page.locator(".stand-text > summary").click();
        }
        assertThat(page.locator(".line-text")).isVisible();
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void aCopiedCountBecomesOneOfItsOwn() {
        var page = desk.editor(written("Copied"));
        page.locator("[data-bar-spot='2']").click();
        page.getByLabel("Bar 2, count 2", exactly()).fill("G5");
        assertThat(page.locator("#mainLine")).hasValue(LINE.replace("bar 2 = bar 1\n", "bar 2 = bar 1\n2    G5\n"));
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void theWholeLineIsWrittenFromTheFretboardByKeyboard() {
        var episode = desk.studio().episode("From nothing");
        var page = desk.editor(episode);
        page.locator(".stand-neck > summary").first().click();
        page.locator("[data-string='3'][data-fret='5']").click();
        assertThat(page.locator(".stand [data-part='place']").first()).hasText("Writes at bar 1, count 1&");
        page.keyboard().press("ArrowUp");
        page.keyboard().press("Enter");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1    E5\n1&   A5\n2    rest\n3    rest\n4    rest\n");
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void afterTheLastCountOfABarTheNextBarIsNamed() {
        var page = desk.editor(desk.studio().episode("By mouse"));
        page.locator(".stand-neck > summary").first().click();
        page.locator("[data-part=step]").first().selectOption("4");
        for (int count = 1; count <= 4; count++) {
            page.locator("[data-string='3'][data-fret='5']").click();
        }
        assertThat(page.locator(".stand [data-part='place']").first()).hasText("Writes at bar 2, count 1");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1    E5\n2    E5\n3    E5\n4    E5\n");
    }

    /** A server takes its time for each of them. */
    @Test
    void whatWasPressedIsWrittenBeforeTheRoomIsLeft() {
        var episode = desk.studio().episode("Pressed fast");
        var page = desk.editor(episode);
        page.locator(".stand-neck > summary").first().click();
        page.locator("[data-part=step]").first().selectOption("4");
        page.evaluate("() => { for (let i = 0; i < 8; i++)"
                + " document.querySelector(\"[data-string='3'][data-fret='5']\")"
                + ".dispatchEvent(new MouseEvent('click', { bubbles: true })); }");
        page.locator("#rooms a").nth(3).click();
        page.waitForURL("**/notes");
        assertThat(page.locator("#notes")).isVisible();
        assertThat(desk.studio().document(episode).mainLine().text())
                .isEqualTo("bar 1\n1    E5\n2    E5\n3    E5\n4    E5\n\nbar 2\n1    E5\n2    E5\n3    E5\n4    E5\n");
        assertThat(desk.complaints()).isEmpty();
    }

    /** From where a page begins, without a way through its head and its rooms. */
    @Test
    void aBarIsAddedByOneKeyWhereverNothingIsTyped() {
        var page = desk.editor(desk.studio().episode("By keys alone"));
        page.keyboard().press("Control+Enter");
        assertThat(page.getByLabel("Bar 1, count 1", exactly())).isFocused();
        page.keyboard().type("E5");
        page.keyboard().press("Escape");
        assertThat(page.locator("[data-bar-spot='1']")).isFocused();
        page.keyboard().press("Control+Enter");
        assertThat(page.getByLabel("Bar 2, count 1", exactly())).isFocused();
        assertThat(page.locator("#mainLine")).hasValue(Pattern.compile("bar 1\\n1    E5"));
    }

    /** Keys that open another bar take the focus out of a field in which something is typed. */
    @Test
    void whatIsTypedBesideABarBelongsToThatBar() {
        var page = desk.editor(desk.written("Whose chord", TWO_BARS));
        page.locator("[data-bar-spot='1']").click();
        page.keyboard().press("ArrowDown");
        assertThat(page.getByLabel("Chords")).isFocused();
        page.keyboard().type("A7");
        page.keyboard().press("Enter");
        page.keyboard().press("ArrowUp");
        assertThat(page.getByLabel("Bar 1, count 1-4", exactly())).isFocused();
        page.keyboard().press("ArrowDown");
        page.keyboard().press("Control+a");
        page.keyboard().type("D7");
        page.keyboard().press("Alt+a");
        assertThat(page.getByLabel("Bar 2, count 1-4", exactly())).isFocused();
        assertThat(page.locator("#mainLine")).hasValue("bar 1 over D7\n1-4  E5\n\nbar 2 = bar 1\n\nbar 3\n1-4  A5\n");
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void aSuggestionIsOneKeyAway() {
        var page = desk.editor(desk.studio().episode("Mended"));
        Browser.write(page, "Line text", "bar 1\n1-4  E5, E58\n");
        assertThat(page.locator(".stand-remarks")).containsText("Fret 58 on string E");
        page.locator("[data-bar-spot='1']").click();
        page.keyboard().press("Alt+r");
        assertThat(page.locator(".stand-remarks")).not().containsText("fret 58");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1-4  E5, E5\n");
        assertThat(page.locator("#live-said")).hasText("No mistakes");
    }

    @Test
    void twoWindowsAreShownSideBySideAndMergedLineByLine() {
        var episode = written("Two windows");
        var page = desk.editor(episode);
        String elsewhere = LINE.replace("tempo   96", "tempo   80").replace("4    A5", "4    A7");
        desk.studio().write(episode, elsewhere);
        Browser.write(page, "Line text", LINE.replace("4    A5", "4    A3"));
        var conflict = page.locator("#draft-conflict");
        assertThat(conflict).isVisible();
        assertThat(conflict).containsText("tempo   80");
        assertThat(Browser.barriers(page)).isEmpty();
        conflict.getByRole(AriaRole.RADIO).nth(1).check(); // the other window's tempo, one's own note
        conflict.getByText("Keep this and save").click();
        assertThat(page.locator("#draft-word")).hasText("All saved");
        String merged = LINE.replace("tempo   96", "tempo   80").replace("4    A5", "4    A3");
        assertThat(page.locator("#mainLine")).hasValue(merged);
        assertThat(desk.studio()
                        .writing
                        .draft(desk.studio().site.educator(), episode.id())
                        .orElseThrow()
                        .document()
                        .mainLine()
                        .text()
                        .replace("\r\n", "\n"))
                .isEqualTo(merged);
    }

    @Test
    void whatTheServerDidNotGetStaysInTheBrowser() {
        var episode = written("Offline");
        var page = desk.editor(episode);
        page.route("**/draft", route -> route.abort());
        String typed = LINE.replace("4    A5", "4    A3");
        Browser.write(page, "Line text", typed);
        assertThat(page.locator("#draft-word")).containsText("the server does not answer");
        page.onDialog(dialog -> dialog.accept()); // leaving asks
        page.reload();
        page.unroute("**/draft");
        assertThat(page.locator("#mainLine")).hasValue(LINE);
        page.getByText("Put it back").click();
        assertThat(page.locator("#mainLine")).hasValue(typed);
        assertThat(page.locator("#draft-word")).hasText("All saved");
    }

    /** A Web MIDI input as the W3C draft describes it: a note-on is 0x90, the pitch, the velocity. */
    @Test
    void aKeyboardsPitchesBecomePlaces() {
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        page.addInitScript("""
                window.midiInput = { name: "Two octaves", onmidimessage: null };
                navigator.requestMIDIAccess = async () => ({ inputs: new Map([["1", window.midiInput]]) });
                """);
        desk.editor(page, desk.studio().episode("Keyboard"));
        page.locator(".stand-neck > summary").first().click();
        page.getByText("Write from a MIDI keyboard").click();
        assertThat(page.getByText("Listening to Two octaves. Stop")).isVisible();
        page.evaluate("() => window.midiInput.onmidimessage({ data: [0x90, 28, 100] })");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1    E0\n2    rest\n3    rest\n4    rest\n");
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void wordsAreCompletedAndUndoneAfterTheNextVisit() {
        var page = desk.editor(written("Completed"));
        page.locator("[data-bar-spot='1']").click();
        var first = page.getByLabel("Bar 1, count 1", exactly());
        first.fill("E5 sla");
        assertThat(page.locator(".choices:not([hidden]) [role=option]").first()).hasText("slap");
        assertThat(Browser.barriers(page)).isEmpty();
        page.keyboard().press("ArrowDown");
        page.keyboard().press("Enter");
        String typed = LINE.replace("1    E5\n", "1    E5 slap\n");
        assertThat(page.locator("#mainLine")).hasValue(typed);
        assertThat(page.locator("#draft-word")).hasText("All saved");
        page.reload();
        assertThat(page.locator("#mainLine")).hasValue(typed);
        assertThat(page.locator("[data-bar-spot='1']")).isVisible();
        page.locator("[data-do='undo']").first().click();
        assertThat(page.locator("#mainLine")).not().hasValue(typed);
    }

    @Test
    void otherWaysAreOneKeyAway() {
        var page = desk.editor(desk.studio().episode("Ways"));
        Browser.write(page, "Line text", "bar 1\n1-4  E5, E8, A5, A7\n");
        page.locator("[data-bar-spot='1']").click();
        page.getByText("Other ways to finger this bar").click();
        assertThat(page.locator(".ways li").first()).isVisible();
        page.keyboard().press("1");
        assertThat(page.locator("#mainLine")).not().hasValue("bar 1\n1-4  E5, E8, A5, A7\n");
        page.locator("[data-do='undo']").first().click();
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1-4  E5, E8, A5, A7\n");
    }

    @Test
    void barsAreMovedBroughtOnceMoreCopiedAndPastedByKeys() {
        var page = desk.editor(desk.written("Keys", TWO_BARS));
        var text = page.locator("#mainLine");
        var keys = page.keyboard();
        page.locator("[data-bar-spot='1']").focus();
        keys.press("Alt+ArrowUp");
        String moved = TWO_BARS.replace("E5", "E6");
        assertThat(text).hasValue(moved);
        keys.press("Shift+ArrowRight");
        keys.press("Control+c");
        keys.press("Alt+a");
        String once = moved + "\nbar 3 = bar 1\n\nbar 4 = bar 2\n";
        assertThat(text).hasValue(once);
        assertThat(page.getByLabel("Bar 3, count 1-4")).isFocused();
        keys.press("Alt+v");
        assertThat(text).hasValue(once + "\nbar 5\n1-4  E6\n\nbar 6\n1-4  A5\n");
        assertThat(page.getByLabel("Bar 5, count 1-4")).isFocused();

        keys.press("Control+z");
        assertThat(text).hasValue(once);
        assertThat(page.locator("[data-bar-spot='4']")).isFocused();
        keys.press("?");
        var all = page.getByRole(AriaRole.DIALOG);
        assertThat(all).isVisible();
        keys.press("Escape");
        assertThat(all).isHidden();
        assertThat(page.locator("[data-bar-spot='4']")).isFocused();
        keys.press("Control+s");
        assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(desk.complaints()).isEmpty();
    }

    @Test
    void theBarInHandIsHeard() {
        var page = desk.editor(written("Heard"));
        var heard = page.waitForResponse(
                "**/listen", () -> page.locator("[data-do='listen']").first().click());
        assertThat(heard.status()).isEqualTo(200);
        assertThat(page.locator("[data-do='listen']").first()).hasText("Stop");
        page.keyboard().press("Alt+p");
        assertThat(page.locator("[data-do='listen']").first()).hasText("Play from here");
        assertThat(desk.complaints()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1280, LIGHT", "360, LIGHT", "1280, DARK"})
    void theDeskFitsAndHasNoBarriers(int width, ColorScheme scheme) {
        var page =
                desk.editor(desk.written("Looks", LINE + "\nbar 3 over D9\n1-4  D5, D3 hammer, D77\n"), width, scheme);
        page.locator("[data-bar-spot='3']").click();
        page.locator(".stand-neck > summary").first().click();
        Looks.keep(page, "line", width, scheme);
        page.evaluate("() => scrollTo(0, 0)"); // nothing lies under the bar that sticks to the top
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(desk.complaints()).as("the browser's own complaints").isEmpty();
    }

    private static Page.GetByLabelOptions exactly() {
        return new Page.GetByLabelOptions().setExact(true);
    }

    private static Episode written(String title) {
        return desk.written(title, LINE);
    }
}
