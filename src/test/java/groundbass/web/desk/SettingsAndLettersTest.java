package groundbass.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.settings.Settings;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.MessageId;
import groundbass.post.Outbox;
import io.restassured.specification.RequestSpecification;
import java.time.Duration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SettingsAndLettersTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void settingsAreSavedAndHoldAtOnce() {
        studio.form()
                .formParam("siteName", "Low Notes")
                .formParam("language", "de")
                .formParam("downloadsNeedSignIn", "yes")
                .formParam("defaultZone", "Europe/Vienna")
                .formParam("publicAddress", "https://low.example")
                .post("/desk/settings")
                .then()
                .statusCode(303);
        var jdbi = studio.site.groundbass().database().jdbi();
        var settings = new Settings(jdbi, new Audit(jdbi, studio.site.clock())).current();
        assertThat(settings.downloadsNeedSignIn()).isTrue();
        assertThat(settings.publicAddress().orElseThrow()).hasToString("https://low.example");
        studio.site
                .browser()
                .header("Accept-Language", "fr")
                .get("/privacy")
                .then()
                .body(containsString("Low Notes"), containsString("lang=\"de\""));
    }

    @Test
    void wrongSettingsComeBackAsTyped() {
        var answer = studio.form()
                .formParam("siteName", "")
                .formParam("language", "en")
                .formParam("defaultZone", "Middle/Earth")
                .formParam("publicAddress", "not an address")
                .header("Accept-Language", "en")
                .post("/desk/settings");
        answer.then()
                .statusCode(422)
                .body(
                        containsString("id=\"siteName-problem\""),
                        containsString("id=\"defaultZone-problem\""),
                        containsString("value=\"not an address\""));
    }

    @Test
    void aLetterThatNobodySendsCanBeReadInFull() {
        var letter = write("A link for you", "Open https://example.org/x");
        layOut(letter);
        studio.browser().get("/desk/outbox").then().body(containsString("A link for you"));
        var page = studio.browser().get("/desk/outbox/" + letter.value());
        page.then().statusCode(200).body(containsString("Open https://example.org/x"));
        assertThat(Studio.mistakes(page.asString())).isEmpty();
    }

    @Test
    void aLetterThatIsMailedKeepsItsSecret() {
        var letter = write("A link by mail", "Open https://example.org/secret");
        studio.browser()
                .get("/desk/outbox/" + letter.value())
                .then()
                .statusCode(200)
                .body(containsString("A link by mail"), not(containsString("example.org/secret")));
    }

    @Test
    void anEducatorWritesToThemselvesToSeeWhetherLettersArrive() {
        String page = studio.form()
                .post("/desk/outbox/test")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        inEnglish().get(page).then().statusCode(200).body(containsString("to desk@trial.example"));
        studio.site.form().post("/desk/outbox/test").then().statusCode(401);
    }

    @Test
    void theDeskSaysThatALetterDidNotArrive() {
        inEnglish().get("/desk").then().body(not(containsString("did not reach")));
        var letter = write("A link to nowhere", "x");
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "update outbox set delivery = 'refused', last_error = '550 no such reader' where id = ?",
                        letter.value()));
        inEnglish().get("/desk").then().body(containsString("One e-mail of the last days did not reach"));
        inEnglish().get("/desk/outbox").then().body(containsString("Refused by the mail server"));
        inEnglish().get("/desk/outbox/" + letter.value()).then().body(containsString("550 no such reader"));
    }

    private static RequestSpecification inEnglish() {
        return studio.browser().header("Accept-Language", "en");
    }

    /** For tomorrow, so that the site's own postman leaves it alone. */
    private static MessageId write(String subject, String text) {
        var to = EmailAddress.read("student@trial.example").orElseThrow();
        var tomorrow = studio.site.clock().instant().plus(Duration.ofDays(1));
        var outbox = new Outbox(studio.site.groundbass().database().jdbi(), studio.site.clock());
        return outbox.put(Mail.of(to, subject, text, tomorrow));
    }

    /** As the development sender leaves it. */
    private static void layOut(MessageId letter) {
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle ->
                        handle.execute("update outbox set delivery = 'on desk' where id = ?", letter.value()));
    }

    @Test
    void aLetterThatIsNotThereIsNotFound() {
        studio.browser().get("/desk/outbox/no-such-id").then().statusCode(404);
        studio.browser().get("/desk/outbox/0000000000000000").then().statusCode(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk/outbox", "/desk/settings"})
    void onlyEducatorsSeeThem(String path) {
        studio.site.browser().get(path).then().statusCode(303);
    }

    @Test
    void noOtherSiteCanChangeSettings() {
        studio.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .post("/desk/settings")
                .then()
                .statusCode(403);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk/outbox", "/desk/settings"})
    void pagesConformToHtml(String path) {
        assertThat(Studio.mistakes(studio.browser().get(path).asString())).isEmpty();
    }
}
