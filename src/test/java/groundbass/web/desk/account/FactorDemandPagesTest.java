package groundbass.web.desk.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import com.eatthepath.otp.TimeBasedOneTimePasswordGenerator;
import groundbass.audience.student.Person;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.web.Site;
import groundbass.web.desk.Studio;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import java.security.InvalidKeyException;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import javax.crypto.spec.SecretKeySpec;
import org.apache.commons.codec.binary.Base32;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** A second factor that the site demands of everybody (OWASP ASVS 5.0, 6.3.3). */
class FactorDemandPagesTest {
    private static final String DEMAND = "/desk/settings/second-factor";
    private static final String SET_UP = "/desk/account/second-factor";
    private static final String THEIR_PASSWORD = "another password";

    private static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    private static EducatorId other() {
        return studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select id from educator where email = 'other@trial.example'")
                .mapTo(EducatorId.class)
                .one());
    }

    private static String token(EducatorId who) {
        var jdbi = studio.site.groundbass().database().jdbi();
        return new ProgramTokens(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock())
                .make(who, "Week", EnumSet.allOf(ProgramScope.class), 30)
                .result()
                .orElseThrow()
                .value();
    }

    private static Response asProgram(String token) {
        return studio.site.browser().header("Authorization", "Bearer " + token).get("/api/v1");
    }

    /** Sets up a second factor with what the page shows, and answers with what comes then. */
    private static Response setUp(Cookie session, String password) throws InvalidKeyException {
        var page = Jsoup.parse(studio.site
                .browser()
                .cookie(session)
                .get(SET_UP + "?next=/desk/keys")
                .asString());
        String secret = page.select("input[name=secret]").val();
        var app = new TimeBasedOneTimePasswordGenerator();
        var key = new SecretKeySpec(new Base32().decode(secret), "HmacSHA1");
        return studio.site
                .form()
                .cookie(session)
                .formParam("secret", secret)
                .formParam("next", page.select("input[name=next]").val())
                .formParam(
                        "code",
                        app.generateOneTimePasswordString(
                                key, studio.site.clock().instant()))
                .formParam("present", password)
                .post(SET_UP);
    }

    private static List<String> paper(Response page) {
        return Jsoup.parse(page.asString()).select(".paper-codes code").eachText();
    }

    private static Response demand(Cookie session, boolean on, String code) {
        var form = studio.site
                .form()
                .cookie(session)
                .formParam("present", Site.PASSWORD)
                .formParam("factor", code);
        return (on ? form.formParam("demanded", "true") : form).post(DEMAND);
    }

    @Test
    void whoHasNoneSetsItUpBeforeAnythingElseOfTheDeskOpens() throws InvalidKeyException {
        String theirs = token(other());
        var theirSession = studio.site.signedIn(new Person.OfEducator(other()));
        var lesson = studio.strangersEpisode;
        assertThat(asProgram(theirs).statusCode()).isEqualTo(200);

        // the owner first, or they would lock themselves out
        var before = studio.browser().get(DEMAND).asString();
        assertThat(Studio.mistakes(before)).isEmpty();
        assertThat(before).contains("Set up a second factor of your own first").doesNotContain("name=\"demanded\"");
        assertThat(demand(studio.cookie, true, "").statusCode()).isEqualTo(422);
        var own = setUp(studio.cookie, Site.PASSWORD);
        var codes = paper(own);
        var owner = own.detailedCookie("session");

        assertThat(demand(owner, true, "").asString()).contains("id=\"factor-problem\"");
        assertThat(Studio.mistakes(
                        studio.site.browser().cookie(owner).get(DEMAND).asString()))
                .isEmpty();
        assertThat(demand(owner, true, codes.get(0)).statusCode()).isEqualTo(303);

        // at the desk already, or signed in just now: led to it, and nowhere else
        for (String page : List.of("/desk", "/desk/account", "/desk/episodes/" + lesson.id() + "?a=b")) {
            studio.site
                    .browser()
                    .cookie(theirSession)
                    .get(page)
                    .then()
                    .statusCode(303)
                    .header(
                            "Location",
                            containsString(SET_UP + "?next="
                                    + page.replace("/", "%2F")
                                            .replace("?", "%3F")
                                            .replace("=", "%3D")));
        }
        studio.site
                .form()
                .cookie(theirSession)
                .formParam("name", "Not yet")
                .post("/desk/account/who")
                .then()
                .statusCode(403)
                .body(containsString("Set up your second factor first"));

        // what is written in a room is kept, and not saved
        String room = "/desk/episodes/" + lesson.id() + "/notes";
        for (boolean signsIn : new boolean[] {true, false}) {
            var form = studio.site.form().cookie(theirSession).formParam("notes", "Typed with care");
            var answer = (signsIn
                            ? form.formParam("email", "other@trial.example").formParam("password", THEIR_PASSWORD)
                            : form)
                    .post(room);
            assertThat(answer.statusCode()).isEqualTo(401);
            theirSession = signsIn ? answer.detailedCookie("session") : theirSession;
            assertThat(answer.asString()).contains("Typed with care", "id=\"factor-problem\"", SET_UP);
            assertThat(Studio.mistakes(answer.asString())).isEmpty();
        }

        studio.site
                .program()
                .cookie(theirSession)
                .header("Sec-Fetch-Site", "same-origin")
                .contentType("application/x-www-form-urlencoded")
                .formParam("notes", "Typed with care")
                .post(room + "/draft")
                .then()
                .statusCode(401);

        // programs of theirs neither
        asProgram(theirs).then().statusCode(403).body("status", equalTo(403));
        assertThat(asProgram(token(studio.site.educator())).statusCode()).isEqualTo(200);

        var page = studio.site.browser().cookie(theirSession).get(SET_UP).asString();
        assertThat(Studio.mistakes(page)).isEmpty();
        assertThat(page).contains("This site demands it", "action=\"/desk/sign-out\"");
        var done = setUp(theirSession, THEIR_PASSWORD);
        assertThat(paper(done)).hasSize(10);
        assertThat(Jsoup.parse(done.asString()).select("#page a.button").attr("href"))
                .isEqualTo("/desk/keys");
        var opened = done.detailedCookie("session");
        assertThat(studio.site.browser().cookie(opened).get("/desk").statusCode())
                .isEqualTo(200);
        assertThat(asProgram(theirs).statusCode())
                .as("ended with the new factor")
                .isEqualTo(401);

        // it can be exchanged and not turned off
        studio.site
                .form()
                .cookie(opened)
                .formParam("present", THEIR_PASSWORD)
                .formParam("factor", paper(done).get(0))
                .post(SET_UP + "/off")
                .then()
                .statusCode(422)
                .body(containsString("not turned off"), containsString("Exchange it"));
        assertThat(setUp(opened, THEIR_PASSWORD).statusCode())
                .as("without a code")
                .isEqualTo(422);

        assertThat(demand(owner, false, "").statusCode()).isEqualTo(422);
        studio.site.clock().advance(Duration.ofMinutes(16));
        assertThat(demand(owner, false, codes.get(1)).statusCode()).isEqualTo(303);
        studio.site
                .browser()
                .cookie(owner)
                .get("/desk/audit")
                .then()
                .body(
                        containsString("Second factor demanded of everybody with a desk"),
                        containsString("Second factor left to each"));
    }
}
