package groundbass.web.student;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The ways through a long lesson: from a bar of the sheet to what is told of it and back, and to each of its parts. */
@Tag("browser")
class WaysTest {
    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    @Test
    void aBarOfTheSheetLeadsToItsStepsAndTheyLeadBack() {
        var page = visit.lesson(visit.reader(390, ColorScheme.LIGHT), "?from=2&to=2");
        page.locator("[data-part=told]").first().click();
        assertThat(focused(page, "document.activeElement.closest('.told-bar').id"))
                .isEqualTo("line-bar-2");
        assertThat(page.locator("#line-bar-2")).isInViewport();
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("To the sheet: Bar 2"))
                .first()
                .click();
        assertThat(focused(page, "document.activeElement.closest('svg') && document.activeElement.dataset.bar"))
                .isEqualTo("2");
        assertThat(page.locator(".sheet-narrow g.event[data-bar='2']").first()).isInViewport();
        page.keyboard().press("Enter");
        assertThat(page.locator("#line-bar-2 .step-now").first()).isVisible();
        assertThat(page.locator("#line-bar-1 .step-now")).hasCount(0);
    }

    /** An exercise's walkthrough is folded away until it is asked for. */
    @Test
    void whatIsFoldedOpensOnTheWay() {
        var page = visit.lesson();
        page.locator("#exercise-1 .practice-more > summary").click();
        page.locator("#exercise-1 [data-part=told]").click();
        assertThat(page.locator("#exercise-1-bar-1 .told-name")).isFocused();
    }

    private static String focused(Page page, String what) {
        return (String) page.evaluate("() => " + what);
    }
}
