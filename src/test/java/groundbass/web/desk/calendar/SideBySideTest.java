package groundbass.web.desk.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.catalog.episode.EpisodeState.Unscheduled;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Level;
import groundbass.publishing.Seen;
import groundbass.web.Html;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two series of one educator: one on Wednesdays every week, one on Fridays every other week, in the same weeks. */
class SideBySideTest {
    /** A Wednesday. The site's clock stands at Monday, 2 February 2026. */
    private static final LocalDate FIRST = LocalDate.parse("2026-02-11");

    private static final Studio studio = new Studio();
    private static Series second;

    @BeforeAll
    static void choose() {
        second = Studio.done(
                studio.catalog.create(studio.site.educator(), new SeriesForm("Slow Water", "", "", "Europe/Lisbon")));
        rhythm(studio.series, FIRST, "1");
        rhythm(second, FIRST.plusDays(2), "2");
    }

    private static void rhythm(Series series, LocalDate first, String weeks) {
        post(
                        "/desk/series/" + series.id() + "/rhythm",
                        Map.of("first", first.toString(), "time", "17:00", "weeks", weeks, "breaks", ""))
                .then()
                .statusCode(303);
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    private static Response post(String path, Map<String, ?> form) {
        return studio.form().formParams(form).post(path);
    }

    private static Document page() {
        return Jsoup.parse(studio.browser().get("/desk/weeks").asString());
    }

    private static Episode lesson(Series series, String title) {
        var episode = Studio.done(studio.writing.create(studio.site.educator(), series.id(), title, Level.BEGINNER));
        studio.write(episode, Studio.LINE);
        return episode;
    }

    private static Episode promised(Series series, String title, LocalDateTime hour) {
        var episode = lesson(series, title);
        promise(episode, hour, seen(episode)).then().statusCode(303);
        return studio.now(episode);
    }

    private static Response promise(Episode episode, LocalDateTime hour, String seen) {
        return post(
                "/desk/weeks/promise", Map.of("episode", episode.id().value(), "local", hour.toString(), "seen", seen));
    }

    private static String seen(Episode episode) {
        return Seen.of(studio.now(episode).state()).token();
    }

    private static LocalDateTime hourOf(Episode episode) {
        return ((Scheduled) studio.now(episode).state()).local();
    }

    private static LocalDateTime wednesday(int week) {
        return FIRST.plusWeeks(week).atTime(17, 0);
    }

    @Test
    void hoursOfAllSeriesStandInTheirWeekEachInItsColumn() {
        var page = page();
        var week = page.select(".week-of:has(time[datetime=" + wednesday(0) + "])");
        assertThat(week.select("h2").text()).isEqualTo("Week of February 9, 2026");
        assertThat(week.select(".week time").eachAttr("datetime"))
                .containsExactly("2026-02-11T17:00", "2026-02-13T17:00");
        assertThat(week.select(".column-1 .overline").eachText()).containsOnly(studio.series.title());
        assertThat(week.select(".column-2 .overline").eachText()).containsExactly("Slow Water");
        assertThat(page.select(".weeks").hasClass("weeks-2")).isTrue();
        var next = page.select(".week-of:has(time[datetime=" + wednesday(1) + "])");
        assertThat(next.select(".column-2")).as("every other week").isEmpty();
        assertThat(page.select(".week-series").text()).contains("Europe/Vienna", "Europe/Lisbon", "stay on the clock");
        assertThat(Html.mistakes(page.outerHtml())).isEmpty();
    }

    @Test
    void twoLessonsChangePlacesAndAWindowThatIsBehindIsTold() {
        var one = promised(studio.series, "Changes places", wednesday(2));
        var other = promised(studio.series, "With this one", wednesday(3));
        var entry = page().select("#lesson-" + one.id() + " form[action$=/swap]");
        var swap = Map.of(
                "episode", one.id().value(),
                "seen", entry.select("[name=seen]").val(),
                "other", entry.select("option:contains(With this one)").val());
        var answer = post("/desk/weeks/swap", swap);
        answer.then().statusCode(303).header("Location", containsString("lesson=" + one.id()));
        assertThat(hourOf(one)).isEqualTo(wednesday(3));
        assertThat(hourOf(other)).isEqualTo(wednesday(2));
        String there =
                answer.header("Location").replaceFirst("^.*(?=/desk)", "").replaceFirst("#.*", "");
        assertThat(Jsoup.parse(studio.browser().get(there).asString())
                        .select("#moved")
                        .text())
                .contains("Changes places", "March 4, 2026");
        post("/desk/weeks/swap", swap).then().statusCode(409).body(containsString("nothing was changed"));
        assertThat(hourOf(one)).isEqualTo(wednesday(3));
        studio.browser().get("/desk/audit").then().body(containsString("Two lessons changed places"));
    }

    @Test
    void aLessonMovesToAFreeHourAndAnHourThatWasTakenIsTold() {
        var one = promised(studio.series, "Moves", wednesday(4));
        var entry = page().select("#lesson-" + one.id() + " form[action$=/promise]");
        assertThat(entry.select("option").eachAttr("value"))
                .contains(wednesday(5).toString());
        String stale = entry.select("[name=seen]").val();
        promise(one, wednesday(5), stale).then().statusCode(303);
        assertThat(hourOf(one)).isEqualTo(wednesday(5));
        promise(one, wednesday(6), stale).then().statusCode(409);
        var late = lesson(studio.series, "Came late");
        promise(late, wednesday(5), seen(late)).then().statusCode(409).body(containsString("“Moves” has this hour"));
        assertThat(studio.now(late).state()).isEqualTo(new Unscheduled());
    }

    /** The lists of free hours name what they offer as it stands on the page. */
    @Test
    void whatAListOffersAsFreeIsNotMovedOnceItIsPromised() {
        var one = lesson(studio.series, "Offered as free");
        var form = page().select(".week:has(time[datetime=" + wednesday(7) + "]) form[action$=/promise]");
        assertThat(form.select("option:contains(Offered as free)").val())
                .isEqualTo(one.id().value());
        promise(one, wednesday(6), seen(one)).then().statusCode(303);
        promise(one, wednesday(7), form.select("[name=seen]").val()).then().statusCode(409);
        assertThat(hourOf(one)).isEqualTo(wednesday(6));
        var now = page().select(".week:has(time[datetime=" + wednesday(7) + "]) form[action$=/promise]");
        post(
                        "/desk/weeks/promise",
                        Map.of(
                                "episode",
                                        now.select("option:contains(Offered as free)")
                                                .val(),
                                "local", wednesday(7).toString(),
                                "seen", now.select("[name=seen]").val()))
                .then()
                .statusCode(303);
        assertThat(hourOf(one)).isEqualTo(wednesday(7));
    }

    @Test
    void aFormOfTheRhythmFromBeforeABreakIsToldAndKeepsWhatWasTyped() {
        var day = FIRST.plusDays(2).plusWeeks(4);
        String path = "/desk/series/" + second.id() + "/rhythm";
        String base = Jsoup.parse(studio.browser().get(path).asString())
                .select("[name=base]")
                .val();
        var form = Map.of("first", FIRST.plusDays(2).toString(), "time", "18:00", "weeks", "2", "breaks", "");
        var skipped = Map.of("series", second.id().value(), "day", day.toString());
        post("/desk/weeks/skip", skipped).then().statusCode(303);
        var late = studio.form().formParams(form).formParam("base", base).post(path);
        late.then().statusCode(409).body(containsString("value=\"18:00\""), containsString(day.toString()));
        assertThat(page().select(".week-break time").eachAttr("datetime")).contains(day + "T17:00");
        String now = Jsoup.parse(late.asString()).select("[name=base]").val();
        assertThat(now).isNotEmpty().isNotEqualTo(base);
        post("/desk/weeks/resume", skipped).then().statusCode(303);
    }

    @Test
    void anHourIsSkippedWithOnePressAndTakenBack() {
        var day = FIRST.plusDays(2).plusWeeks(2);
        var form = Map.of("series", second.id().value(), "day", day.toString());
        post("/desk/weeks/skip", form).then().statusCode(303);
        var pause = page().select(".week-break:has(time[datetime=" + day + "T17:00])");
        assertThat(pause.text()).contains("A break");
        assertThat(pause.select("form[action$=/resume]")).hasSize(1);
        var late = lesson(second, "For a break");
        promise(late, day.atTime(17, 0), seen(late)).then().statusCode(409).body(containsString("is a break by now"));
        post("/desk/weeks/resume", form).then().statusCode(303);
        assertThat(page().select(".week-break")).isEmpty();
        post("/desk/weeks/skip", Map.of("series", second.id().value(), "day", "soon"))
                .then()
                .statusCode(422);
    }

    /** In Lisbon it is an hour earlier than in Vienna (IANA time zone database), where this one was promised. */
    @Test
    void whatIsPromisedBesideTheRhythmStandsOnTheClocksOfItsSeries() {
        var day = FIRST.plusDays(2).plusWeeks(6);
        var beside = lesson(second, "Beside it");
        var far = lesson(second, "Far ahead");
        var hour = Map.of("zone", "Europe/Vienna", "seen", "draft");
        studio.form()
                .formParams(hour)
                .formParam("local", day.atTime(20, 30).toString())
                .post("/desk/episodes/" + beside.id() + "/promise")
                .then()
                .statusCode(303);
        var later = FIRST.plusDays(2).plusWeeks(2 * 20);
        studio.form()
                .formParams(hour)
                .formParam("local", later.atTime(18, 0).toString())
                .post("/desk/episodes/" + far.id() + "/promise")
                .then()
                .statusCode(303);
        var page = page();
        assertThat(Html.mistakes(page.outerHtml())).as("two hours on one day").isEmpty();
        var cell = page.select("li:has(#lesson-" + beside.id() + ")");
        assertThat(cell.select("time").attr("datetime")).isEqualTo(day + "T19:30");
        assertThat(cell.text()).contains("Promised beside the rhythm.");
        var ahead = page.select("li:has(#lesson-" + far.id() + ")");
        assertThat(ahead.select("time").attr("datetime")).isEqualTo(later + "T17:00");
        assertThat(ahead.text()).doesNotContain("beside the rhythm");
    }

    @Test
    void aDayThatNoCalendarReachesIsNoDay() {
        for (String act : List.of("skip", "resume")) {
            post("/desk/weeks/" + act, Map.of("series", second.id().value(), "day", "+999999999-12-31"))
                    .then()
                    .statusCode(422);
        }
        var mine = lesson(second, "In a far year");
        promise(mine, LocalDateTime.parse("+999999999-12-31T17:00"), seen(mine))
                .then()
                .statusCode(422);
    }

    @Test
    void whatEachStillLacksStandsThereWithTheWayToMendIt() {
        var empty = studio.episode("Nothing in it");
        var lacks = page().select(".week-others li:contains(Nothing in it) .hint");
        assertThat(lacks.text()).contains("stand in its way", "Lines", "Rights");
        assertThat(lacks.select("a").attr("href")).isEqualTo("/desk/episodes/" + empty.id() + "/preflight");
    }

    @Test
    void nobodyTouchesTheHoursOfAnother() {
        var mine = lesson(studio.series, "Mine");
        String theirs = studio.strangersEpisode.id().value();
        post("/desk/weeks/swap", Map.of("episode", theirs, "other", mine.id().value()))
                .then()
                .statusCode(404);
        post("/desk/weeks/swap", Map.of("episode", mine.id().value(), "other", theirs))
                .then()
                .statusCode(404);
        post(
                        "/desk/weeks/skip",
                        Map.of("series", studio.strangersEpisode.series().value(), "day", FIRST.toString()))
                .then()
                .statusCode(404);
        studio.site
                .browser()
                .cookie(studio.cookie)
                .header("Sec-Fetch-Site", "cross-site")
                .formParam("episode", mine.id().value())
                .post("/desk/weeks/swap")
                .then()
                .statusCode(403);
        studio.browser().get("/desk/weeks/swap").then().statusCode(303);
    }
}
