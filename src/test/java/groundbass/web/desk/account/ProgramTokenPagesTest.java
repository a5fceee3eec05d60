package groundbass.web.desk.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.web.Site;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Where an educator lets programs in. */
class ProgramTokenPagesTest {
    private static final String PATH = "/desk/account/programs";
    private static final Pattern TOKEN = Pattern.compile("groundbass_[A-Za-z0-9_-]{43}");

    private static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    private static Response make(String name, String password) {
        return studio.form()
                .header("Accept-Language", "en")
                .formParam("name", name)
                .formParam("scopes", "read", "statistics")
                .formParam("days", "30")
                .formParam("present", password)
                .post(PATH);
    }

    private static String page() {
        String page = studio.browser().header("Accept-Language", "en").get(PATH).asString();
        assertThat(Studio.mistakes(page)).isEmpty();
        return page;
    }

    private static int asks(String token) {
        return studio.site
                .program()
                .header("Authorization", "Bearer " + token)
                .get("/api/v1/series")
                .statusCode();
    }

    @Test
    void aTokenIsShownOnceListedAndWithdrawn() {
        var made = make("Friday upload", Site.PASSWORD);
        made.then().statusCode(200).header("Cache-Control", "no-store");
        assertThat(Studio.mistakes(made.asString())).isEmpty();
        var shown = TOKEN.matcher(made.asString());
        assertThat(shown.find()).isTrue();
        String token = shown.group();
        assertThat(asks(token)).isEqualTo(200);

        String page = page();
        assertThat(page)
                .contains("Friday upload", "read how often what was taken")
                .doesNotContain(token);
        assertThat(page).doesNotContain("Never used");
        studio.browser().get("/desk/account").then().statusCode(200).body(containsString("href=\"" + PATH + "\""));
        String audit = studio.browser()
                .header("Accept-Language", "en")
                .get("/desk/audit")
                .asString();
        assertThat(audit).contains("Program let in", "Friday upload").doesNotContain(token);

        String id = Jsoup.parse(page).select("input[name=id]").attr("value");
        studio.form().formParam("id", id).post(PATH + "/withdraw").then().statusCode(303);
        assertThat(asks(token)).isEqualTo(401);
        assertThat(page()).doesNotContain("<strong>Friday upload</strong>");
    }

    /** What was typed comes back, the password does not. */
    @Test
    void withoutThePasswordNobodyIsLetIn() {
        make("Stranger", "not the password")
                .then()
                .statusCode(422)
                .body(containsString("value=\"Stranger\""))
                .body(not(containsString("not the password")))
                .body(not(containsString("groundbass_")));
        make("", Site.PASSWORD).then().statusCode(422);
        studio.site.form().formParam("name", "Nobody").post(PATH).then().statusCode(401);
        assertThat(page()).doesNotContain("<strong>Stranger</strong>");
    }
}
