package groundbass.web.desk.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.document.Clearance;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.web.Html;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.TextStyle;
import java.util.Locale;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A series that goes out on Wednesdays at 17:00 in Vienna, beginning in the week after next. */
class WeeksPageTest {
    static final Studio studio = new Studio();
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static LocalDate first;

    @BeforeAll
    static void choose() {
        first = LocalDate.ofInstant(studio.site.clock().instant(), VIENNA).plusDays(10);
        rhythm(first.toString()).then().statusCode(303);
    }

    private static Response rhythm(String first) {
        return studio.form()
                .formParam("first", first)
                .formParam("time", "17:00")
                .formParam("weeks", "1")
                .formParam("breaks", WeeksPageTest.first.plusWeeks(1).toString())
                .post("/desk/series/" + studio.series.id() + "/rhythm");
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    private static Document page() {
        return Jsoup.parse(studio.browser().get("/desk/weeks").asString());
    }

    private static Episode lesson(String title) {
        var episode = studio.episode(title);
        var draft = studio.writing.draft(studio.site.educator(), episode.id()).orElseThrow();
        var document = draft.document()
                .edit()
                .mainLine(new LineSource("", Studio.LINE))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
        Studio.done(studio.writing.saveDraft(studio.site.educator(), episode.id(), draft.version(), document));
        return episode;
    }

    private static Response promise(Episode episode, LocalDateTime hour) {
        return studio.form()
                .formParam("episode", episode.id().value())
                .formParam("local", hour.toString())
                .post("/desk/weeks/promise");
    }

    /** Unicode CLDR, long date of en-GB: {@code d MMMM y}. */
    @Test
    void datesAreWrittenAsWhereTheReaderLives() {
        var page = studio.browser().header("Accept-Language", "en-GB").get("/desk/weeks");
        String month = first.getMonth().getDisplayName(TextStyle.FULL, Locale.UK);
        assertThat(Jsoup.parse(page.asString()).text())
                .contains(first.getDayOfMonth() + " " + month + " " + first.getYear());
    }

    @Test
    void theHoursOfTheRhythmStandThereWithoutTheBreak() {
        var hours = page().select(".week time").eachAttr("datetime");
        assertThat(hours).hasSize(8).startsWith(first + "T17:00", first.plusWeeks(2) + "T17:00");
    }

    @Test
    void aLessonTakesAFreeHourAndGivesItBack() {
        var episode = lesson("Takes an hour");
        var hour = first.plusWeeks(2).atTime(17, 0);
        promise(episode, hour).then().statusCode(303);
        var promised = (EpisodeState.Scheduled) studio.now(episode).state();
        assertThat(promised.at()).isEqualTo(hour.atZone(VIENNA).toInstant());
        assertThat(page().select(".week:has(time[datetime=" + hour + "])").text())
                .contains("Takes an hour");
        promise(episode, first.plusWeeks(3).atTime(17, 0)).then().statusCode(303);
        assertThat(page().select(".week:has(time[datetime=" + hour + "])").hasClass("week-free"))
                .isTrue();
        studio.form()
                .formParam("episode", episode.id().value())
                .post("/desk/weeks/withdraw")
                .then()
                .statusCode(303);
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
    }

    @Test
    void lessonsWithoutAnHourAreProposedInTheirOrder() {
        studio.episode("Proposed");
        studio.episode("Proposed next");
        var proposed = page().select(".week-free option[selected]").eachText();
        var undated = page().select(".week-others li > a").eachText();
        assertThat(proposed).hasSizeGreaterThan(1).containsExactlyElementsOf(undated.subList(0, proposed.size()));
    }

    @Test
    void whatIsNotReadyIsHeldAndSaysWhatIsMissing() {
        var empty = studio.episode("Nothing written");
        var answer = promise(empty, first.atTime(17, 0));
        answer.then()
                .statusCode(422)
                .body(
                        containsString("Nothing written"),
                        containsString("/desk/episodes/" + empty.id() + "/publish#preflight"));
        assertThat(Jsoup.parse(answer.asString())
                        .select(".week:has(time[datetime=" + first + "T17:00]) option[selected]")
                        .val())
                .as("the choice stays")
                .isEqualTo(empty.id().value());
        assertThat(studio.now(empty).state()).isEqualTo(new EpisodeState.Unscheduled());
        assertThat(page().select(".week-others li:contains(Nothing written) .hint")
                        .text())
                .contains("in its way");
    }

    @Test
    void nobodyPromisesTheLessonOfAnother() {
        promise(studio.strangersEpisode, first.atTime(17, 0)).then().statusCode(404);
    }

    @Test
    void anHourThatIsNoneIsRefused() {
        studio.form()
                .formParam("episode", lesson("At no hour").id().value())
                .formParam("local", "whenever")
                .post("/desk/weeks/promise")
                .then()
                .statusCode(422);
    }

    @Test
    void aRhythmThatIsWrongComesBackAsTyped() {
        rhythm("31 May").then().statusCode(422).body(containsString("id=\"first-problem\""), containsString("31 May"));
    }

    @Test
    void pagesConformToHtml() {
        assertThat(Html.mistakes(studio.browser().get("/desk/weeks").asString()))
                .isEmpty();
        assertThat(Html.mistakes(studio.browser()
                        .get("/desk/series/" + studio.series.id() + "/rhythm")
                        .asString()))
                .isEmpty();
    }
}
