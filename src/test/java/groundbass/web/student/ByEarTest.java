package groundbass.web.student;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * A lesson by what the accessibility tree says alone: nothing is found by anything but its role and its name (WAI-ARIA
 * 1.2), and nothing is pressed but by a key or as a screen reader presses it.
 */
@Tag("browser")
class ByEarTest {
    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    @Test
    void aLessonIsFoundPlayedAndLookedInto() {
        var page = visit.reader();
        page.navigate(visit.address());
        one(page, AriaRole.LINK, "Four Ropes").press("Enter");
        assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
                .containsText("Four Ropes");
        var player = one(page, AriaRole.REGION, "Play along: Four Ropes");
        // the other one says a caution when a visit first plays
        var status = player.getByRole(AriaRole.STATUS).last();
        one(player, AriaRole.CHECKBOX, "Count in first").press("Space");
        one(page, AriaRole.LINK, "Play along").press("Enter");
        var play = one(player, AriaRole.BUTTON, "Play");
        assertThat(play).isFocused();
        play.press("Enter");
        assertThat(status).hasText("Playing the whole line at 80 %");
        one(player, AriaRole.BUTTON, "Pause").press("Enter");
        assertThat(status).hasText(Pattern.compile("(Paused|Stopped).*"));

        var row = page.getByRole(AriaRole.GROUP, named(Pattern.compile("Bars 1 to \\d")));
        var note =
                row.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName(Pattern.compile("^Bar 2, 1: ")));
        note.first().dispatchEvent("click"); // a screen reader's press: no pointer was there
        assertThat(status).hasText("Playing the whole line at 80 %");
        one(player, AriaRole.BUTTON, "Pause").press("Enter");
        one(player, AriaRole.BUTTON, "This bar").press("Enter");
        one(player, AriaRole.BUTTON, "This bar step by step").press("Enter");
        assertThat(page.getByRole(AriaRole.HEADING, named(Pattern.compile("^Bar [1-4]$")))
                        .and(page.locator(":focus")))
                .isVisible();
        one(page, AriaRole.BUTTON, "To the sheet: Bar 2").press("Enter");
        assertThat(note.first()).isFocused();
    }

    /** The first of that name: exercises have players of their own further down. */
    private static Locator one(Page page, AriaRole role, String name) {
        return page.getByRole(role, new Page.GetByRoleOptions().setName(name).setExact(true))
                .first();
    }

    private static Locator one(Locator inside, AriaRole role, String name) {
        return inside.getByRole(
                role, new Locator.GetByRoleOptions().setName(name).setExact(true));
    }

    private static Page.GetByRoleOptions named(Pattern name) {
        return new Page.GetByRoleOptions().setName(name);
    }
}
