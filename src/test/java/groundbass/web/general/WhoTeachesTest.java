package groundbass.web.general;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.educator.TrialEducators;
import groundbass.web.Html;
import groundbass.web.Site;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class WhoTeachesTest {
    @Test
    void everyPageLeadsToWhoTeachesAndWhereToWrite() {
        try (var site = Site.open()) {
            site.browser()
                    .get("/who-teaches")
                    .then()
                    .statusCode(200)
                    .body(containsString("Nobody has written here yet"), not(containsString("mailto:")));
            var desk = site.atTheDesk();
            site.form()
                    .cookie(desk)
                    .formParam("name", "A. <Teacher>")
                    .formParam("email", "hello@teacher.example")
                    .formParam("words", "Low notes,\nslowly.")
                    .formParam("legal", "1 Quay Street")
                    .formParam("guardians", "Under sixteen with a parent.")
                    .post("/desk/who-teaches")
                    .then()
                    .statusCode(303);
            site.clock().advance(Duration.ofSeconds(2));
            String page = site.browser().get("/who-teaches").asString();
            assertThat(page)
                    .contains("A. &lt;Teacher&gt;", "mailto:hello@teacher.example", "1 Quay Street", "Report a rights")
                    .contains("Under sixteen with a parent.", "Low notes,\nslowly.");
            assertThat(Html.mistakes(page)).isEmpty();
            for (String path : new String[] {"/", "/privacy", "/cautions", "/sign-in"}) {
                site.browser()
                        .get(path)
                        .then()
                        .body(containsString("href=\"/who-teaches\""), containsString("/who-teaches#rights"));
            }
            site.browser().get("/privacy").then().body(containsString("hello@teacher.example"));
            site.browser().get("/sign-in").then().body(containsString("Under sixteen with a parent."));
        }
    }

    @Test
    void whatIsWrongComesBackAsTyped() {
        try (var site = Site.open()) {
            var answer = site.form()
                    .cookie(site.atTheDesk())
                    .formParam("name", "")
                    .formParam("email", "nobody")
                    .formParam("words", "Kept words")
                    .post("/desk/who-teaches");
            answer.then()
                    .statusCode(422)
                    .body(
                            containsString("id=\"name-problem\""),
                            containsString("id=\"email-problem\""),
                            containsString("Kept words"));
            assertThat(Html.mistakes(answer.asString())).isEmpty();
        }
    }

    /** What is known already stands in the form, so that it has only to be agreed to. */
    @Test
    void theFormBeginsWithWhoIsSignedIn() {
        try (var site = Site.open()) {
            var jdbi = site.groundbass().database().jdbi();
            TrialEducators.create(jdbi, site.clock(), "Quay Studio", "quay@trial.example", "quartz lantern boat seven");
            site.browser()
                    .cookie(site.atTheDesk())
                    .get("/desk/who-teaches")
                    .then()
                    .body(containsString("Quay Studio"), containsString("quay@trial.example"));
        }
    }
}
