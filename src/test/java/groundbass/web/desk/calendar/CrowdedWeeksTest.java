package groundbass.web.desk.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Level;
import groundbass.web.desk.Studio;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One series with more drafts than a page looks over, and another whose hour is today, ten minutes before midnight. */
class CrowdedWeeksTest {
    private static final int MANY = 30;

    private static final Studio studio = new Studio();
    private static LocalDate today;
    private static Series nightly;

    @BeforeAll
    static void fill() {
        for (int i = 1; i <= MANY; i++) {
            studio.episode("Draft " + i);
        }
        today = LocalDate.ofInstant(studio.site.clock().instant(), ZoneId.of("Europe/Vienna"));
        nightly = Studio.done(
                studio.catalog.create(studio.site.educator(), new SeriesForm("Night Tide", "", "", "Europe/Vienna")));
        post(
                "/desk/series/" + nightly.id() + "/rhythm",
                Map.of("first", today.toString(), "time", "23:50", "weeks", "1", "breaks", ""));
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    private static void post(String path, Map<String, ?> form) {
        studio.form().formParams(form).post(path).then().statusCode(303);
    }

    private static Document page() {
        return Jsoup.parse(studio.browser().get("/desk/weeks").asString());
    }

    @Test
    void todaysHourIsSkippedAndTheBreakTakenBackBeforeItStrikes() {
        var form = Map.of("series", nightly.id().value(), "day", today.toString());
        String day = "#day-" + nightly.id() + "-" + today;
        post("/desk/weeks/skip", form);
        assertThat(page().select(day + ".week-break form[action$=/resume]")).hasSize(1);
        post("/desk/weeks/resume", form);
        assertThat(page().select(day + ".week-free")).hasSize(1);
    }

    @Test
    void whatGoesOutNextIsLookedOverHoweverManyDraftsStandBeforeIt() {
        var next = Studio.done(studio.writing.create(studio.site.educator(), nightly.id(), "Next", Level.BEGINNER));
        studio.write(next, Studio.LINE);
        var hour = today.plusWeeks(1).atTime(23, 50);
        post("/desk/weeks/promise", Map.of("episode", next.id().value(), "local", hour.toString(), "seen", "draft"));
        var page = page();
        assertThat(page.select("#lesson-" + next.id()).text()).contains("Ready to go out.");
        assertThat(page.select(".week-others .hint:contains(in its way)"))
                .as("the others in their order, as far as it goes")
                .hasSizeBetween(1, MANY - 1);
    }
}
