package groundbass.web.desk.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import com.eatthepath.otp.TimeBasedOneTimePasswordGenerator;
import groundbass.web.Site;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.security.InvalidKeyException;
import java.time.Duration;
import javax.crypto.spec.SecretKeySpec;
import org.apache.commons.codec.binary.Base32;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class SecondFactorPagesTest {
    private static final String PATH = "/desk/account/second-factor";
    private static final String EMAIL = "desk@trial.example";

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    private static Response enter(String code) {
        return studio.site
                .form()
                .formParam("email", EMAIL)
                .formParam("password", Site.PASSWORD)
                .formParam("factor", code)
                .formParam("next", "/desk")
                .post("/desk/sign-in");
    }

    /** Somebody at a borrowed desk who knows the password, with a code or without. */
    private static RequestSpecification typing(String session, String code) {
        return studio.site
                .form()
                .cookie("session", session)
                .formParam("present", Site.PASSWORD)
                .formParam("factor", code);
    }

    @Test
    void aPasswordAloneNoLongerLetsIn() throws InvalidKeyException {
        assertThat(enter("").statusCode()).as("before").isEqualTo(303);
        String page = studio.browser().get(PATH).asString();
        assertThat(Studio.mistakes(page)).isEmpty();
        String secret = Jsoup.parse(page).select("input[name=secret]").val();
        var key = new SecretKeySpec(new Base32().decode(secret), "HmacSHA1");
        var app = new TimeBasedOneTimePasswordGenerator();

        studio.form()
                .formParam("secret", secret)
                .formParam("code", "12345")
                .formParam("present", Site.PASSWORD)
                .post(PATH)
                .then()
                .statusCode(422)
                .body(containsString("value=\"" + secret + "\""), containsString("id=\"code-problem\""));
        var on = studio.form()
                .formParam("secret", secret)
                .formParam(
                        "code",
                        app.generateOneTimePasswordString(
                                key, studio.site.clock().instant()))
                .formParam("present", Site.PASSWORD)
                .post(PATH);
        assertThat(on.statusCode()).isEqualTo(200);
        var codes = Jsoup.parse(on.asString()).select(".paper-codes code").eachText();
        assertThat(codes).hasSize(10);

        assertThat(enter("").statusCode()).isEqualTo(422);
        assertThat(enter(codes.get(0)).statusCode()).isEqualTo(303);
        assertThat(enter(codes.get(0)).statusCode()).isEqualTo(422);
        studio.site.clock().advance(Duration.ofMinutes(1));
        var entered =
                enter(app.generateOneTimePasswordString(key, studio.site.clock().instant()));
        assertThat(entered.statusCode()).isEqualTo(303);

        var page2 = studio.site
                .browser()
                .cookie("session", entered.cookie("session"))
                .get(PATH);
        page2.then().body(containsString("9 codes on paper are left"));
        String session = entered.cookie("session");
        assertThat(typing(session, "").post(PATH + "/off").statusCode()).isEqualTo(422);
        assertThat(typing(session, "")
                        .formParam("name", "Program")
                        .formParam("days", "30")
                        .formParam("scopes", "read")
                        .post("/desk/account/programs")
                        .asString())
                .contains("id=\"factor-problem\"");
        assertThat(typing(session, "")
                        .formParam("known", Site.PASSWORD)
                        .formParam("name", "Studio")
                        .formParam("email", "elsewhere@trial.example")
                        .post("/desk/account/who")
                        .asString())
                .contains("id=\"factor-problem\"");
        String other = studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select id from educator where email = 'other@trial.example'")
                .mapTo(String.class)
                .one());
        var ended = typing(session, "").formParam("who", other).post("/desk/people/end");
        assertThat(ended.asString()).contains("id=\"factor-" + other + "-problem\"");
        assertThat(Studio.mistakes(ended.asString())).isEmpty();
        assertThat(typing(session, "")
                        .formParam("who", other)
                        .post("/desk/people/hand-over")
                        .asString())
                .contains("id=\"factor-hand-problem\"");
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "insert into series_colleague (series_id, educator_id, part, since) values (?, ?, 'editor', now())",
                        studio.series.id().value(),
                        other));
        assertThat(typing(session, "")
                        .formParam("who", other)
                        .post("/desk/series/" + studio.series.id() + "/colleagues/hand-over")
                        .asString())
                .contains("id=\"factor-hand-problem\"");
        assertThat(typing(session, codes.get(1)).post(PATH + "/off").statusCode())
                .isEqualTo(303);
        assertThat(enter("").statusCode()).isEqualTo(303);
    }
}
