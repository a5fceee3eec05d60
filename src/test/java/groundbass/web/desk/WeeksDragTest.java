package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.episode.Episode;
import groundbass.web.Browser;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Lessons dragged in the coming weeks, where a drop does what a press of the same form does. */
@Tag("browser")
class WeeksDragTest {
    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    @Test
    void aLessonIsDraggedToAnHourToAnotherAndOntoAnotherLesson() {
        var studio = desk.studio();
        var first = LocalDate.ofInstant(studio.site.clock().instant(), ZoneId.of("Europe/Vienna"))
                .plusDays(7);
        studio.form()
                .formParam("first", first.toString())
                .formParam("time", "17:00")
                .formParam("weeks", "1")
                .formParam("breaks", "")
                .post("/desk/series/" + studio.series.id() + "/rhythm")
                .then()
                .statusCode(303);
        var ebb = desk.written("Ebb", Studio.LINE);
        var flood = desk.written("Flood", Studio.LINE);
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        page.setViewportSize(1280, 3000); // all of it in sight, so that nothing moves under what is dragged
        page.navigate(desk.address() + "/desk/weeks");
        assertThat(page.locator("#drag-hint")).isVisible();

        drag(page, ebb, first);
        drag(page, flood, first.plusWeeks(1));
        drag(page, ebb, first.plusWeeks(2));
        assertThat(hour(page, first)).not().containsText("Promised");
        drag(page, ebb, first.plusWeeks(1));
        assertThat(hour(page, first.plusWeeks(2))).containsText("Flood");
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(desk.complaints()).isEmpty();
    }

    private static void drag(Page page, Episode lesson, LocalDate to) {
        var from = page.locator("[data-lesson='" + lesson.id() + "'] a").first().boundingBox();
        var there = hour(page, to).locator("time").first().boundingBox();
        page.waitForResponse(answer -> answer.url().contains("/desk/weeks?lesson=" + lesson.id()), () -> {
            page.mouse().move(from.x + from.width / 2, from.y + from.height / 2);
            page.mouse().down();
            page.mouse().move(there.x + 20, there.y + 20);
            page.mouse().move(there.x + 10, there.y + 10);
            page.mouse().up();
        });
        assertThat(hour(page, to)).containsText(lesson.title());
        assertThat(page.locator("#moved")).containsText("Promised");
    }

    private static Locator hour(Page page, LocalDate day) {
        return page.locator(".week-cell:has(time[datetime='" + day + "T17:00'])");
    }
}
