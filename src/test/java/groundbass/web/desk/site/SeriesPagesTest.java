package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;

import groundbass.web.Html;
import groundbass.web.desk.Studio;
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
    void somebodyElsesSeriesIsNotThere() {
        String theirs = "/desk/series/" + studio.strangersEpisode.series();
        studio.browser().get(theirs).then().statusCode(404);
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
