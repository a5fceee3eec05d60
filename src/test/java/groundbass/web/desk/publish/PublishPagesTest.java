package groundbass.web.desk.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Episodes;
import groundbass.document.LineSource;
import groundbass.release.ReleaseNote;
import groundbass.release.Releases;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PublishPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void publishingPromisesWhatIsSavedForNowAndShowsHowItStands() {
        var episode = written("Out at once");
        studio.form()
                .post(path(episode) + "/publish")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/publish"));
        studio.browser()
                .get(path(episode) + "/calendar")
                .then()
                .statusCode(200)
                .body(containsString("Release 1"), not(containsString("<html")));
    }

    @Test
    void anotherNumberMovesTheLessonAndAnImpossibleOneIsTold() {
        var first = written("To be moved");
        var second = written("Was after it");
        studio.form()
                .formParam("number", second.number())
                .post(path(first) + "/number")
                .then()
                .statusCode(303);
        assertThat(studio.now(first).number()).isEqualTo(second.number());
    }

    @ParameterizedTest
    @ValueSource(strings = {"-3", "0", "seven", "10000"})
    void aNumberThatIsNoneIsToldAsItWasTyped(String number) {
        studio.form()
                .formParam("number", number)
                .post(path(written("Numbered")) + "/number")
                .then()
                .statusCode(422)
                .body(
                        containsString("id=\"number-problem\""),
                        containsString("9,999; “" + (number.equals("10000") ? "10,000" : number)),
                        not(containsString("this is 0")));
    }

    @Test
    void aDraftIsThrownAwayAndFetchedBack() {
        var episode = written("A mistake");
        String room = studio.browser().get(path(episode) + "/publish").asString();
        assertThat(Jsoup.parse(room).select("form[action$=/throw-away]")).hasSize(1);
        studio.browser()
                .get(path(episode) + "/throw-away")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/publish"));
        studio.form().post(path(episode) + "/throw-away").then().statusCode(303).header("Location", endsWith("/desk"));
        studio.browser().get(path(episode) + "/publish").then().statusCode(404);
        String bin = studio.browser().get("/desk/thrown-away").asString();
        assertThat(Studio.mistakes(bin)).isEmpty();
        assertThat(bin).contains("A mistake");
        studio.form()
                .formParam("episode", studio.strangersEpisode.id().value())
                .post("/desk/thrown-away")
                .then()
                .statusCode(404);
        studio.form()
                .formParam("episode", episode.id().value())
                .post("/desk/thrown-away")
                .then()
                .statusCode(303);
        studio.browser().get(path(episode) + "/publish").then().statusCode(200);
        studio.form().post(path(studio.strangersEpisode) + "/throw-away").then().statusCode(404);
        studio.site.form().post(path(episode) + "/throw-away").then().statusCode(401);
        studio.browser()
                .get("/desk/audit")
                .then()
                .body(containsString("Draft thrown away"), containsString("Draft fetched back"));
    }

    @Test
    void aLessonIsTakenBackAndPutBack() {
        var episode = out("Taken back");
        studio.form()
                .formParam("why", "x".repeat(501))
                .post(path(episode) + "/take-back")
                .then()
                .statusCode(422)
                .body(containsString("why-problem"), containsString("xxxxx"));
        studio.form()
                .formParam("why", "Its owner objects.")
                .post(path(episode) + "/take-back")
                .then()
                .statusCode(303);
        assertThat(studio.now(episode).isOut()).isFalse();
        String room = studio.browser().get(path(episode) + "/publish").asString();
        assertThat(Studio.mistakes(room)).isEmpty();
        assertThat(room).contains("Its owner objects.", "/put-back");
        studio.form().post(path(episode) + "/throw-away").then().statusCode(422);
        studio.form().post(path(episode) + "/put-back").then().statusCode(303);
        assertThat(studio.now(episode).isOut()).isTrue();
        studio.form().post(path(studio.strangersEpisode) + "/take-back").then().statusCode(404);
        studio.site.form().post(path(episode) + "/take-back").then().statusCode(401);
    }

    @Test
    void aCorrectionSaysInASentenceWhatChanged() {
        var episode = out("To be corrected");
        studio.write(episode, Studio.LINE.replace("A5*2", "A7*2"));
        studio.form()
                .formParam("byLetter", "yes")
                .post(path(episode) + "/publish")
                .then()
                .statusCode(422)
                .body(containsString("note-problem"));
        studio.form()
                .formParam("note", "Count 1 is at the seventh fret.")
                .formParam("byLetter", "yes")
                .post(path(episode) + "/publish")
                .then()
                .statusCode(303);
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        assertThat(releases.latest(episode.id()).orElseThrow().note())
                .isEqualTo(new ReleaseNote("Count 1 is at the seventh fret.", true));
    }

    /** That it is out is all that matters here; its files are no part of it. */
    private static Episode out(String title) {
        var episode = written(title);
        var jdbi = studio.site.groundbass().database().jdbi();
        jdbi.useTransaction(handle -> new Episodes(jdbi)
                .markPublished(handle, episode.id(), studio.site.clock().instant()));
        return studio.now(episode);
    }

    /** A look at a draft promises nothing, and what was seen is what goes out. */
    @Test
    void aDraftIsSeenAsStudentsWillBeforeAnythingIsPromised() {
        var episode = written("Looked at first");
        var answer = studio.form().post(path(episode) + "/trial");
        answer.then().statusCode(303).header("Location", containsString("/preview/"));
        String preview = answer.header("Location").replaceFirst("^.*(?=/preview/)", "");
        assertThat(studio.now(episode).state()).isInstanceOf(EpisodeState.Unscheduled.class);
        studio.browser().get(path(episode) + "/publish").then().body(not(containsString("Release 1")));
        studio.form().post(path(episode) + "/trial").then().header("Location", endsWith(preview));
        studio.form().post(path(episode) + "/publish").then().statusCode(303);
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        assertThat(releases.of(episode.id()))
                .singleElement()
                .satisfies(release -> assertThat(preview).endsWith(release.id().value()))
                .satisfies(release -> assertThat(release.spec().release()).isEqualTo(1));
    }

    @Test
    void aTrialNeverGoesOutInPlaceOfWhatWasPromised() {
        var episode = written("Promised first");
        studio.form()
                .formParam("local", "2026-09-01T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        var promised = releases.latest(episode.id()).orElseThrow();
        studio.write(episode, Studio.LINE.replace("A5*2", "A7*2"));
        studio.form().post(path(episode) + "/trial").then().statusCode(303);
        assertThat(releases.latest(episode.id()).orElseThrow().id()).isEqualTo(promised.id());
    }

    @Test
    void whatMustBeRightFirstIsToldWithTheWayToItsRoom() {
        var episode = studio.episode("Not ready");
        studio.change(episode, edit -> edit.mainLine(new LineSource("", "bar 1\n1-4 E58\n"))
                .exercises(List.of(new LineSource("", "bar 1\n1-4 Q1\n"))));
        var answer = studio.form().post(path(episode) + "/publish");
        answer.then().statusCode(422).body(containsString("href=\"#preflight\""));
        assertThat(Jsoup.parse(answer.asString())
                        .select("#preflight .work-failed a")
                        .eachAttr("href"))
                .contains(
                        path(episode) + "/line#mainLine",
                        path(episode) + "/exercises/1#exercises-0",
                        path(episode) + "/facts#rights.statement");
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
    }

    /** The way leads to a field that is there. */
    @Test
    void whatStandsInTheWayIsListedBeforehandWithTheWayToMendIt() {
        var episode = studio.episode("Not yet");
        studio.change(
                episode, edit -> edit.mainLine(new LineSource("", Studio.LINE)).notes("![](bars:40-41)"));
        var page = Jsoup.parse(studio.browser().get(path(episode) + "/publish").asString());
        assertThat(page.select("#preflight").text()).contains("bars:40-41", "its bars are 1 to 1", "qualified adviser");
        assertThat(page.select("#preflight li a").eachAttr("href"))
                .containsExactlyInAnyOrder(
                        path(episode) + "/notes#notes",
                        path(episode) + "/facts#rights.statement",
                        path(episode) + "/facts#rights.clearance")
                .allSatisfy(way -> {
                    String there =
                            studio.browser().get(way.replaceFirst("#.*", "")).asString();
                    assertThat(Jsoup.parse(there).getElementById(way.replaceFirst(".*#", "")))
                            .isNotNull();
                });
    }

    /** A stretch of four frets so low is for few hands (test of the rules: stretch-hard). */
    @Test
    void whatIsUnwiseGoesOutOnceItsRemarkIsAccepted() {
        var episode = studio.episode("Far apart");
        String wide = "bar 1\n1 E5+A9\n2-4 rest\n";
        studio.write(episode, wide);
        var answer = studio.form().post(path(episode) + "/publish");
        answer.then().statusCode(422);
        String accepting = Jsoup.parse(answer.asString()).select("#accepted").attr("value");
        assertThat(accepting).isNotEmpty();
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        studio.form()
                .formParam("accepted", accepting)
                .post(path(episode) + "/publish")
                .then()
                .statusCode(303);
    }

    @Test
    void anAddressThatLeadsNowhereIsPrintedOnlyWhenAccepted() {
        try (var local = new Studio("")) {
            var episode = local.episode("At home");
            local.write(episode, Studio.LINE);
            var answer = local.form().post(path(episode) + "/publish");
            answer.then().statusCode(422).body(containsString("/desk/settings#publicAddress"));
            String accepting =
                    Jsoup.parse(answer.asString()).select("#accepted").attr("value");
            local.form()
                    .formParam("accepted", accepting)
                    .post(path(episode) + "/publish")
                    .then()
                    .statusCode(303);
        }
    }

    @Test
    void deskAndEditorSayInBarsWhatThePromiseDoesNotHoldYet() {
        var episode = written("Still writing");
        studio.form()
                .formParam("local", "2026-02-06T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        studio.browser().get("/desk").then().body(not(containsString("differs")));
        studio.site.clock().advance(Duration.ofSeconds(30)); // shorter than a draft is left alone
        studio.write(episode, Studio.LINE.replace("A5*2, E5, A5", "A5*2, E5, A7"));
        String difference = "differs from what is fixed so far (release 1): bar 1: count 1a (pitch)";
        studio.browser().get(path(episode) + "/publish").then().body(containsString(difference));
        studio.browser().get("/desk").then().body(containsString(difference));
        assertThat(Studio.mistakes(studio.browser().get("/desk").asString())).isEmpty();
        assertThat(Studio.mistakes(
                        studio.browser().get(path(episode) + "/publish").asString()))
                .isEmpty();
    }

    /** IANA time zone database: Vienna is one hour ahead of UTC in winter. */
    @Test
    void anHourIsPromisedInItsZoneAndTakenBack() {
        var episode = written("On Friday");
        studio.form()
                .formParam("local", "2026-02-06T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        var promised = (EpisodeState.Scheduled) studio.now(episode).state();
        assertThat(promised.at()).isEqualTo(Instant.parse("2026-02-06T17:00:00Z"));
        assertThat(promised.zone()).isEqualTo(ZoneId.of("Europe/Vienna"));
        studio.browser().get("/desk").then().body(allOf(containsString("Promised for"), containsString("CET")));

        studio.form().post(path(episode) + "/withdraw").then().statusCode(303);
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
        studio.form().post(path(episode) + "/withdraw").then().statusCode(422);
    }

    /** The clocks of Vienna go from 02:00 to 03:00 on 29 March 2026 (Directive 2000/84/EC: last Sunday of March). */
    @ParameterizedTest
    @CsvSource({
        "'', Europe/Vienna, local, choose a date and an hour",
        "2026-02-01T09:00, Europe/Vienna, local, has passed",
        "2026-03-29T02:30, Europe/Vienna, local, does not exist",
        "+999999999-01-01T18:00, Europe/Vienna, local, choose a date and an hour",
        "2026-02-06T18:00, Middle/Earth, zone, fill this in"
    })
    void anHourThatCannotBeKeptIsRefused(String local, String zone, String field, String reason) {
        var episode = written("At no hour");
        studio.form()
                .formParam("local", local)
                .formParam("zone", zone)
                .post(path(episode) + "/promise")
                .then()
                .statusCode(422)
                .body(containsString("id=\"" + field + "-problem\""), containsString(reason));
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
    }

    @Test
    void thePreviewTellsWhatMomentTheHourIs() {
        var episode = written("What moment");
        studio.form()
                .formParam("local", "2026-07-03T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/publish/look")
                .then()
                .body(containsString("6:00"), containsString("CEST"), containsString("4:00"), containsString("UTC"));
    }

    @Test
    void whileItIsMadeThePageSaysSoAndAsksForNothingMore() {
        var episode = written("Being made");
        var now = studio.site.clock().instant();
        var atOnce = new EpisodeState.Scheduled(
                now, ZoneId.of("UTC"), LocalDateTime.ofInstant(now, ZoneId.of("UTC")), now, 1);
        var jdbi = studio.site.groundbass().database().jdbi();
        jdbi.useTransaction(handle -> new Episodes(jdbi).schedule(handle, episode.id(), atOnce)); // never built
        var page = room(episode);
        assertThat(page.select("#making")).hasSize(1);
        assertThat(page.select("#publish button[formaction]").eachAttr("formaction"))
                .doesNotContain(path(episode) + "/promise")
                .contains(path(episode) + "/withdraw");
        assertThat(page.select("#publish button:not([formaction])")).isEmpty();
        assertThat(Studio.mistakes(page.outerHtml())).isEmpty();
    }

    @Test
    void aWindowThatDidNotSeeThePromiseIsToldAndKeepsWhatWasTyped() {
        var episode = written("In two windows");
        String seen = seen(episode);
        hour(episode, seen, "2026-09-01T18:00").then().statusCode(303);
        var late = hour(episode, seen, "2026-09-08T18:00");
        late.then()
                .statusCode(409)
                .body(containsString("href=\"#calendar\""), containsString("value=\"2026-09-08T18:00\""));
        var state = (EpisodeState.Scheduled) studio.now(episode).state();
        assertThat(state.local()).hasToString("2026-09-01T18:00");
        String now =
                Jsoup.parse(late.asString()).select("#publish input[name=seen]").val();
        hour(episode, now, "2026-09-08T18:00").then().statusCode(303);
    }

    @Test
    void aPageFromBeforeItWentOutBringsNothingOutAgain() {
        var episode = written("Out meanwhile");
        String seen = seen(episode);
        var jdbi = studio.site.groundbass().database().jdbi();
        jdbi.useTransaction(handle -> new Episodes(jdbi)
                .markPublished(handle, episode.id(), studio.site.clock().instant()));
        studio.form()
                .formParam("seen", seen)
                .post(path(episode) + "/publish")
                .then()
                .statusCode(409)
                .body(containsString("went out meanwhile"), not(containsString("note-problem")));
        assertThat(new Releases(jdbi).of(episode.id())).isEmpty();
    }

    private static Response hour(Episode episode, String seen, String local) {
        return studio.form()
                .formParam("seen", seen)
                .formParam("local", local)
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise");
    }

    private static Document room(Episode episode) {
        return Jsoup.parse(studio.browser().get(path(episode) + "/publish").asString());
    }

    private static String seen(Episode episode) {
        String seen = room(episode).select("#publish input[name=seen]").val();
        assertThat(seen).isNotEmpty();
        return seen;
    }

    private static Episode written(String title) {
        var episode = studio.episode(title);
        studio.write(episode, Studio.LINE);
        return episode;
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
