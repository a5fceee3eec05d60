package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import groundbass.web.Browser;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The educator's week at the desk, from an empty line to a script that agrees with it: eight bars written on the sheet,
 * two planted mistakes told and mended, a step of the walkthrough in other words, a script with three planted
 * contradictions.
 */
@Tag("browser")
class WritingPathTest {
    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    /** The fifth fret of the E string sounds A, the eighth C, the seventh of the A string E: the 12-TET fretboard. */
    private static final String SCRIPT = """
            We are in G major today. The first note is an A, the fifth fret of the E string.
            Then comes a D at the eighth fret of the E string.
            The seventh fret of the A string is an E. The fifth fret of the A string is an F.
            """;

    @Test
    void eightBarsFromNothingToAScriptThatIsProofread() {
        var page = desk.editor(desk.studio().episode("From nothing"));
        write(page);
        mend(page);
        assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(Browser.barriers(page)).isEmpty();
        retell(page);
        proofread(page);
        assertThat(desk.complaints()).isEmpty();
    }

    private static void write(Page page) {
        press(page, "Key, meter, tempo and more");
        page.getByLabel("Key", exactly()).fill("A minor");
        page.keyboard().press("Enter");
        page.getByLabel("Tempo", exactly()).last().fill("92");
        page.keyboard().press("Escape");
        bar(page, "Add a bar", 1, "E5, E8, A5, A7");
        bar(page, "", 2, "A7, A5, E8, E58"); // there is no such fret
        bar(page, "", 3, "D5, D7, G5, G7");
        bar(page, "", 4, "A7, A5 hammer, E8, E5"); // nobody hammers downward
        page.getByLabel("Line text", exactly()).focus();
        page.keyboard().press("Control+End");
        page.keyboard().insertText("\nbar 5 = bar 1\nbar 6 = bar 2\nbar 7 = bar 3\nbar 8\n1-4  E5\n");
        assertThat(page.locator("[data-bar-spot='8']")).isVisible();
    }

    private static void bar(Page page, String button, int number, String events) {
        if (button.isEmpty()) {
            page.keyboard().press("Control+Enter");
        } else {
            press(page, button);
        }
        var notes = events.split(", ");
        for (int count = 1; count <= notes.length; count++) {
            assertThat(page.getByLabel("Bar " + number + ", count " + count, exactly()))
                    .isFocused();
            page.keyboard().press("Control+a");
            page.keyboard().type(notes[count - 1]);
            if (count < notes.length) {
                page.keyboard().press("Tab");
            }
        }
    }

    private static void mend(Page page) {
        var remarks = page.locator(".stand-remarks").first();
        assertThat(remarks).containsText("Fret 58 on string E");
        assertThat(remarks).containsText("A hammer sounds a higher fret");
        page.locator("[data-bar-spot='2']").click();
        page.keyboard().press("Alt+r");
        assertThat(remarks).not().containsText("fret 58");
        page.locator("[data-bar-spot='4']").click();
        page.keyboard().press("Alt+r");
        assertThat(remarks).not().containsText("A hammer sounds");
        assertThat(page.locator("#mainLine")).hasValue(Pattern.compile("2    A5 pull"));
        assertThat(page.locator("#live-said")).containsText("No mistakes");
    }

    private static void retell(Page page) {
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Walkthrough"))
                .first()
                .click();
        var step = page.locator("textarea[name=said]").first();
        assertThat(step).not().hasValue("");
        step.fill("Four quarter notes, up from A to E, with one finger a fret.");
        assertThat(page.locator("#draft-word")).hasText("All saved");
        page.reload();
        assertThat(page.locator("textarea[name=said]").first())
                .hasValue("Four quarter notes, up from A to E, with one finger a fret.");
        assertThat(page.getByRole(AriaRole.MAIN)).containsText("quarter");
    }

    private static void proofread(Page page) {
        page.keyboard().press("Alt+.");
        page.waitForURL("**/script");
        page.locator("#script").fill(SCRIPT);
        press(page, "Save and check");
        assertThat(page.locator(".script-wrong > li")).hasCount(3);
    }

    private static Page.GetByLabelOptions exactly() {
        return new Page.GetByLabelOptions().setExact(true);
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(false))
                .first()
                .click();
    }
}
