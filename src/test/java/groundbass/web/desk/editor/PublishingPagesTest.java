package groundbass.web.desk.editor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.release.Releases;
import groundbass.web.desk.EpisodePagesTest;
import groundbass.web.desk.Studio;
import io.restassured.specification.RequestSpecification;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PublishingPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void publishingSavesWhatIsTypedAndPromisesItForNow() {
        var episode = studio.episode("Out at once");
        form(0).post(path(episode) + "/publish")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "#calendar"));
        assertThat(studio.writing
                        .draft(studio.site.educator(), episode.id())
                        .orElseThrow()
                        .document()
                        .mainLine()
                        .text())
                .isEqualTo(Studio.LINE);
        studio.browser()
                .get(path(episode) + "/calendar")
                .then()
                .statusCode(200)
                .body(containsString("Release 1"), not(containsString("<html")));
    }

    /** A look at a draft promises nothing, and what was seen is what goes out. */
    @Test
    void aDraftIsSeenAsStudentsWillBeforeAnythingIsPromised() {
        var episode = studio.episode("Looked at first");
        var answer = form(0).post(path(episode) + "/trial");
        answer.then().statusCode(303).header("Location", containsString("/preview/"));
        String preview = answer.header("Location").replaceFirst("^.*(?=/preview/)", "");
        assertThat(studio.now(episode).state()).isInstanceOf(EpisodeState.Unscheduled.class);
        studio.browser().get(path(episode)).then().body(not(containsString("Release 1")));
        form(1).post(path(episode) + "/trial").then().header("Location", endsWith(preview));
        form(1).post(path(episode) + "/publish").then().statusCode(303);
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        assertThat(releases.of(episode.id()))
                .singleElement()
                .satisfies(release -> assertThat(preview).endsWith(release.id().value()))
                .satisfies(release -> assertThat(release.spec().release()).isEqualTo(1));
    }

    @Test
    void aTrialNeverGoesOutInPlaceOfWhatWasPromised() {
        var episode = studio.episode("Promised first");
        form(0).formParam("local", "2026-09-01T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        var promised = releases.latest(episode.id()).orElseThrow();
        EpisodePagesTest.typed(studio.form(), 1, Studio.LINE.replace("A5*2", "A7*2"))
                .post(path(episode) + "/trial")
                .then()
                .statusCode(303);
        assertThat(releases.latest(episode.id()).orElseThrow().id()).isEqualTo(promised.id());
    }

    @Test
    void whatMustBeRightFirstIsToldBesideItsFieldAndTheTextIsSaved() {
        var episode = studio.episode("Not ready");
        EpisodePagesTest.typed(studio.form(), 0, "bar 1\n1-4 E58\n")
                .formParam("exerciseText", "bar 1\n1-4 Q1\n")
                .post(path(episode) + "/publish")
                .then()
                .statusCode(422)
                .body(
                        containsString("href=\"#mainLine\""),
                        containsString("href=\"#exercises-0\""),
                        containsString("id=\"exercises-0-problem\""),
                        containsString("name=\"base\" value=\"1\""));
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
    }

    @Test
    void nothingGoesOutWithoutItsRightsLine() {
        var episode = studio.episode("Whose is it");
        studio.form()
                .formParam("base", 0)
                .formParam("title", "Whose is it")
                .formParam("mainLine", Studio.LINE)
                .formParam("settings.language", "en")
                .post(path(episode) + "/publish")
                .then()
                .statusCode(422)
                .body(
                        containsString("id=\"rights.statement-problem\""),
                        containsString("id=\"rights.clearance-problem\""),
                        containsString("qualified adviser"));
    }

    @Test
    void whatStandsInTheWayIsListedBeforehandWithTheWayToMendIt() {
        var episode = studio.episode("Not yet");
        studio.form()
                .formParam("base", 0)
                .formParam("title", "Not yet")
                .formParam("mainLine", Studio.LINE)
                .formParam("notes", "![](bars:40-41)")
                .formParam("settings.language", "en")
                .post(path(episode))
                .then()
                .statusCode(303);
        var page = Jsoup.parse(studio.browser().get(path(episode)).asString());
        assertThat(page.select("#preflight a").eachAttr("href")).contains(path(episode) + "#notes");
        assertThat(page.select("#preflight").text()).contains("bars:40-41", "its bars are 1 to 1");
        assertThat(page.select("#notes")).hasSize(1);
    }

    /** A stretch of four frets so low is for few hands (test of the rules: stretch-hard). */
    @Test
    void whatIsUnwiseGoesOutOnceItsRemarkIsAccepted() {
        var episode = studio.episode("Far apart");
        String wide = "bar 1\n1 E5+A9\n2-4 rest\n";
        var answer = EpisodePagesTest.typed(studio.form(), 0, wide).post(path(episode) + "/publish");
        answer.then().statusCode(422);
        String accepting = Jsoup.parse(answer.asString()).select("#accepted").attr("value");
        assertThat(accepting).isNotEmpty();
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        EpisodePagesTest.typed(studio.form(), 1, wide)
                .formParam("accepted", accepting)
                .post(path(episode) + "/publish")
                .then()
                .statusCode(303);
    }

    @Test
    void anAddressThatLeadsNowhereIsPrintedOnlyWhenAccepted() {
        try (var local = new Studio("")) {
            var episode = local.episode("At home");
            var answer = EpisodePagesTest.typed(local.form(), 0, Studio.LINE).post(path(episode) + "/publish");
            answer.then().statusCode(422).body(containsString("/desk/settings#publicAddress"));
            String accepting =
                    Jsoup.parse(answer.asString()).select("#accepted").attr("value");
            EpisodePagesTest.typed(local.form(), 1, Studio.LINE)
                    .formParam("accepted", accepting)
                    .post(path(episode) + "/publish")
                    .then()
                    .statusCode(303);
        }
    }

    @Test
    void deskAndEditorSayInBarsWhatThePromiseDoesNotHoldYet() {
        var episode = studio.episode("Still writing");
        form(0).formParam("local", "2026-02-06T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        studio.browser().get("/desk").then().body(not(containsString("differs")));
        studio.site.clock().advance(Duration.ofSeconds(30)); // shorter than a draft is left alone
        EpisodePagesTest.typed(studio.form(), 1, Studio.LINE.replace("A5*2, E5, A5", "A5*2, E5, A7"))
                .formParam("summary", "Another.")
                .post(path(episode));
        String difference = "differs from what is fixed so far (release 1): bar 1: count 1a (pitch)";
        studio.browser().get(path(episode)).then().body(containsString(difference));
        studio.browser().get("/desk").then().body(containsString(difference));
        assertThat(Studio.mistakes(studio.browser().get("/desk").asString())).isEmpty();
        assertThat(Studio.mistakes(studio.browser().get(path(episode)).asString()))
                .isEmpty();
    }

    /** IANA time zone database: Vienna is one hour ahead of UTC in winter. */
    @Test
    void anHourIsPromisedInItsZoneAndTakenBack() {
        var episode = studio.episode("On Friday");
        form(0).formParam("local", "2026-02-06T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/promise")
                .then()
                .statusCode(303);
        var promised = (EpisodeState.Scheduled) studio.now(episode).state();
        assertThat(promised.at()).isEqualTo(Instant.parse("2026-02-06T17:00:00Z"));
        assertThat(promised.zone()).isEqualTo(ZoneId.of("Europe/Vienna"));
        studio.browser().get("/desk").then().body(allOf(containsString("Promised for"), containsString("CET")));

        form(1).post(path(episode) + "/withdraw").then().statusCode(303);
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
        form(2).post(path(episode) + "/withdraw").then().statusCode(422);
    }

    /** The clocks of Vienna go from 02:00 to 03:00 on 29 March 2026 (Directive 2000/84/EC: last Sunday of March). */
    @ParameterizedTest
    @CsvSource({
        "'', Europe/Vienna, local, choose a date and an hour",
        "2026-02-01T09:00, Europe/Vienna, local, has passed",
        "2026-03-29T02:30, Europe/Vienna, local, does not exist",
        "2026-02-06T18:00, Middle/Earth, zone, fill this in"
    })
    void anHourThatCannotBeKeptIsRefused(String local, String zone, String field, String reason) {
        var episode = studio.episode("At no hour");
        form(0).formParam("local", local)
                .formParam("zone", zone)
                .post(path(episode) + "/promise")
                .then()
                .statusCode(422)
                .body(containsString("id=\"" + field + "-problem\""), containsString(reason));
        assertThat(studio.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
    }

    @Test
    void thePreviewTellsWhatMomentTheHourIs() {
        var episode = studio.episode("What moment");
        form(0).formParam("local", "2026-07-03T18:00")
                .formParam("zone", "Europe/Vienna")
                .post(path(episode) + "/preview")
                .then()
                .body(containsString("6:00"), containsString("CEST"), containsString("4:00"), containsString("UTC"));
    }

    private static RequestSpecification form(int base) {
        return EpisodePagesTest.typed(studio.form(), base, Studio.LINE);
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
