package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.Clearance;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.web.Html;
import groundbass.web.desk.Studio;
import io.restassured.specification.RequestSpecification;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeriesPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void aSeriesIsCreatedAndStandsOnTheDesk() {
        studio.form()
                .formParam("title", "Night Grooves")
                .formParam("summary", "After dark")
                .formParam("zone", "Europe/Vienna")
                .post("/desk/series/new")
                .then()
                .statusCode(303);
        studio.browser()
                .get("/desk")
                .then()
                .body(
                        containsString("Night Grooves"),
                        not(containsString("High Tide")),
                        containsString("<details class=\"begin\" open"));
    }

    @Test
    void whatWasTypedComesBackWithWhatIsWrong() {
        studio.form()
                .formParam("title", "")
                .formParam("slug", "Not A Slug")
                .formParam("summary", "Kept <b>as typed</b>")
                .formParam("zone", "Europe/Vienna")
                .post("/desk/series/new")
                .then()
                .statusCode(422)
                .body(
                        containsString("id=\"title-problem\""),
                        containsString("value=\"Not A Slug\""),
                        containsString("Kept &lt;b&gt;as typed&lt;/b&gt;"));
    }

    @Test
    void aSeriesIsChanged() {
        String path = "/desk/series/" + studio.series.id();
        studio.browser().get(path).then().statusCode(200).body(containsString("value=\"Low Tide\""));
        studio.form()
                .formParam("title", "Low Tide")
                .formParam("summary", "Changed")
                .formParam("zone", "Asia/Kathmandu")
                .post(path)
                .then()
                .statusCode(303);
        assertThat(studio.catalog.find(studio.series.id()).orElseThrow().zone().getId())
                .isEqualTo("Asia/Kathmandu");
    }

    @Test
    void anEpisodeIsBegunAndOpened() {
        studio.form()
                .formParam("title", "Rope Ladder")
                .formParam("level", "advanced")
                .post("/desk/series/" + studio.series.id() + "/episodes")
                .then()
                .statusCode(303)
                .header("Location", matchesPattern(".*/desk/episodes/[a-z0-9]{16}"));
        studio.browser().get("/desk").then().body(containsString("Rope Ladder"), containsString("Draft"));
    }

    @Test
    void anEpisodeWithoutATitleIsAskedForAgain() {
        var answer = studio.form().formParam("title", " ").post("/desk/series/" + studio.series.id() + "/episodes");
        answer.then().statusCode(422).body(containsString("id=\"title-problem\""));
        assertThat(Html.mistakes(answer.asString())).isEmpty();
    }

    @Test
    void whatNewLessonsBeginWithIsSaidOnce() {
        String path = "/desk/series/" + studio.series.id() + "/beginning";
        String page = studio.browser().get(path).asString();
        assertThat(Html.mistakes(page)).isEmpty();
        beginning("60 90").post(path).then().statusCode(303);
        studio.browser().get(path).then().body(containsString("value=\"60 90\""), containsString("Nobody else"));
        var document = studio.document(begun("Begins so", ""));
        assertThat(document.rights())
                .isEqualTo(new Rights(
                        "Nobody else",
                        "",
                        "Own work.",
                        Clearance.GIVEN,
                        new Licence("No. 12", "A publisher", "2099-01-31")));
        assertThat(document.settings().tempos()).isEqualTo("60 90");
        assertThat(document.notes()).isEqualTo("## How to play it");
        assertThat(document.level()).isEqualTo(Level.ADVANCED);
        beginning("quick").post(path).then().statusCode(422).body(containsString("quick"));
    }

    @Test
    void aLessonBeginsLikeTheLastOrAsADuplicate() {
        var first = begun("The first", "");
        studio.write(first, Studio.LINE);
        var duplicate = studio.document(begun("Again", first.id().value()));
        assertThat(duplicate.mainLine().text()).isEqualTo(Studio.LINE);
        assertThat(duplicate.title()).isEqualTo("Again");
        var like = studio.document(begun("Like it", "last"));
        assertThat(like.mainLine().isBlank()).isTrue();
        assertThat(like.rights().statement()).isEqualTo("Own work.");
        var theirs =
                studio.document(begun("Not theirs", studio.strangersEpisode.id().value()));
        assertThat(theirs.mainLine().isBlank()).isTrue();
    }

    private static RequestSpecification beginning(String tempos) {
        return studio.form()
                .formParam("level", "advanced")
                .formParam("rights.composer", "Nobody else")
                .formParam("rights.statement", "Own work.")
                .formParam("rights.clearance", "given")
                .formParam("rights.licence.reference", "No. 12")
                .formParam("rights.licence.from", "A publisher")
                .formParam("rights.licence.until", "2099-01-31")
                .formParam("notes", "## How to play it")
                .formParam("settings.language", "en")
                .formParam("settings.tempos", tempos)
                .formParam("settings.rounds", "2");
    }

    private static Episode begun(String title, String from) {
        String there = studio.form()
                .formParam("title", title)
                .formParam("from", from)
                .post("/desk/series/" + studio.series.id() + "/episodes")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        return studio.episode(EpisodeId.parse(there.replaceFirst(".*/", "")).orElseThrow());
    }

    @Test
    void somebodyElsesSeriesIsNotThere() {
        String theirs = "/desk/series/" + studio.strangersEpisode.series();
        studio.browser().get(theirs).then().statusCode(404);
        studio.browser().get(theirs + "/beginning").then().statusCode(404);
        studio.form().post(theirs + "/beginning").then().statusCode(404);
        studio.form().formParam("title", "Mine now").post(theirs).then().statusCode(404);
        studio.form()
                .formParam("title", "Mine now")
                .post(theirs + "/episodes")
                .then()
                .statusCode(404);
        studio.browser().get("/desk/series/no-such-id").then().statusCode(404);
    }

    @Test
    void noOtherSiteCanSendTheForm() {
        studio.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .post("/desk/series/new")
                .then()
                .statusCode(403);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk", "/desk/series/new"})
    void pagesConformToHtml(String path) {
        assertThat(Html.mistakes(studio.browser().get(path).asString())).isEmpty();
    }
}
