package groundbass.web.student;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import groundbass.web.Browser;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** Bar 2 begins with A5: the third string, fifth fret. What a left-handed player sees is its mirror image. */
    @Test
    void theNeckShowsWhereTheFingersAre() {
        var page = visit.lesson(visit.reader(390, ColorScheme.DARK), "?from=2.1&to=2.1");
        assertThat(page.locator("[data-part=fretboard]").first()).isHidden();
        page.locator("[data-part=neck]").first().check();
        page.locator("[data-part=countIn]").first().uncheck();
        page.locator(".practice-go").first().click();
        var fret = page.locator(".practice-neck .neck-fret").first();
        assertThat(fret).hasText("5");
        double right = Double.parseDouble(fret.getAttribute("x"));
        page.locator("[data-part=leftHanded]").first().check();
        assertThat(fret).hasText("5");
        double left = Double.parseDouble(fret.getAttribute("x"));
        double width = ((Number)
                        page.locator(".practice-neck svg").first().evaluate("svg => svg.viewBox.baseVal.width"))
                .doubleValue();
        assertThat(left).isEqualTo(width - right).isNotEqualTo(right);
        assertThat(Browser.barriers(page)).isEmpty();
    }

    /** By the letters that the line has them by, the highest on top, whichever hand stops them. */
    @Test
    void theNeckNamesItsStrings() {
        var page = visit.lesson();
        page.locator("[data-part=neck]").first().check();
        var names = page.locator(".practice-neck").first().locator(".neck-name");
        assertThat(names).hasText(new String[] {"G", "D", "A", "E"});
        double before = Double.parseDouble(names.first().getAttribute("x"));
        page.locator("[data-part=leftHanded]").first().check();
        assertThat(names).hasText(new String[] {"G", "D", "A", "E"});
        assertThat(Double.parseDouble(names.first().getAttribute("x"))).isGreaterThan(before);
    }

    /** A row of the sheet is a group with a name, and the way to playing ends where one plays. */
    @Test
    void theButtonAboveLeadsToTheOneThatPlays() {
        var page = visit.lesson(390, ColorScheme.LIGHT);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Play along"))
                .click();
        assertThat(page.locator(".practice-go").first()).isFocused();
        assertThat(page.locator(".practice-go").first()).isInViewport();
        assertThat(page.locator(".sheet-narrow g.system").first()).hasAttribute("aria-label", "Bar 1");
        assertThat(page.locator(".sheet-narrow g.system").first()).isInViewport();
    }

    /** Nothing moves when the music begins: on a telephone the strip is as high whatever its button says. */
    @ParameterizedTest
    @CsvSource({"360, en", "390, en", "360, de", "390, de"})
    void theStripIsAsHighWhileItPlays(int width, String language) {
        var reader = visit.reader(width, ColorScheme.LIGHT);
        reader.context().addCookies(List.of(new Cookie("language", language).setUrl(visit.address())));
        var page = visit.lesson(reader, "");
        var heights = (List<?>) page.evaluate("""
                () => {
                  const words = document.getElementById('practice-words').content;
                  const go = document.querySelector('.practice-go');
                  return [['stopped', 'play'], ['loading', 'wait'], ['playing', 'pause']].map(([state, word]) => {
                    go.dataset.state = state;
                    go.textContent = words.querySelector(`[data-word=${word}]`).textContent;
                    return go.closest('.practice-strip').offsetHeight;
                  });
                }""");
        assertThat(heights).hasSize(3).allMatch(heights.get(0)::equals);
        assertThat((int) heights.get(0)).isLessThan(130);
    }

    private static String focused(Page page, String what) {
        return (String) page.evaluate("() => " + what);
    }
}
