package groundbass.web.desk.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.web.Html;
import groundbass.web.Site;
import io.restassured.response.Response;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EducatorSignInTest {
    private static final String EMAIL = "desk@trial.example";
    private static final String PASSWORD = "a password for trials";

    static final Site site = Site.open();

    @AfterAll
    static void close() {
        site.close();
    }

    @BeforeEach
    void waitUntilNobodyRemembersEarlierTries() {
        site.clock().advance(Duration.ofHours(1));
    }

    @Test
    void theFirstEducatorComesInWithTheCodeThatWasPrintedAndNobodyElseDoes() {
        try (var fresh = Site.open()) {
            String code = fresh.groundbass().setUpNotice().setUpCode().orElseThrow();
            fresh.browser().get("/desk/sign-in").then().body(containsString("/desk/set-up"));
            setUp(fresh, "0000000000000000")
                    .then()
                    .statusCode(422)
                    .body(containsString("This set-up code does not work"), containsString("value=\"Quay Studio\""))
                    .body(not(containsString("four strings and a code")));
            assertThat(record(fresh)).first().satisfies(entry -> {
                assertThat(entry.who()).isEqualTo(Audit.STRANGER);
                assertThat(entry.what()).isEqualTo("entry.refused");
                assertThat(entry.detail()).doesNotContain("0000000000000000", "quay");
            });
            var answer = setUp(fresh, code);
            assertThat(answer.statusCode()).isEqualTo(303);
            fresh.browser()
                    .cookie("session", answer.cookie("session"))
                    .get("/desk")
                    .then()
                    .statusCode(200);
            assertThat(setUp(fresh, code).statusCode()).isEqualTo(422);
            fresh.browser().get("/desk/set-up").then().statusCode(303).header("Location", endsWith("/desk/sign-in"));
        }
    }

    private static Response setUp(Site fresh, String code) {
        return fresh.form()
                .formParam("code", code)
                .formParam("name", "Quay Studio")
                .formParam("email", "quay@trial.example")
                .formParam("password", "four strings and a code")
                .post("/desk/set-up");
    }

    @Test
    void aSiteWithAnEducatorPrintsNoCode() {
        try (var fresh = Site.open()) {
            assertThat(fresh.groundbass().setUpNotice().setUpCode()).isPresent();
            fresh.educator();
            fresh.browser().get("/desk/sign-in").then().body(not(containsString("/desk/set-up")));
        }
    }

    @Test
    void whoeverSignsInGoesWhereTheyWantedToGo() {
        var answer = signIn(EMAIL, PASSWORD, "/desk/series/new");
        answer.then().statusCode(303).header("Location", endsWith("/desk/series/new"));
        site.browser()
                .cookie("session", answer.cookie("session"))
                .get("/desk/series/new")
                .then()
                .statusCode(200);
    }

    @Test
    void nobodyIsSentToAnotherSite() {
        signIn(EMAIL, PASSWORD, "//elsewhere.example/").then().header("Location", endsWith("/desk"));
    }

    /** OWASP Authentication Cheat Sheet, "Authentication and Error Messages": one answer for both. */
    @Test
    void aWrongAddressAndAWrongPasswordGetTheSameAnswer() {
        var wrongPassword = signIn(EMAIL, "something else entirely", "");
        var wrongAddress = signIn("nobody@trial.example", PASSWORD, "");
        assertThat(wrongPassword.statusCode()).isEqualTo(422);
        assertThat(wrongAddress.statusCode()).isEqualTo(422);
        assertThat(wrongAddress.asString().replace("nobody@trial.example", EMAIL))
                .isEqualTo(wrongPassword.asString());
        assertThat(wrongPassword.cookies()).doesNotContainKey("session");
    }

    @Test
    void tooManyTriesMustWaitEvenWithTheRightPassword() {
        for (int i = 0; i < 10; i++) {
            signIn(EMAIL, "wrong for the " + i + "th time", "");
        }
        assertThat(signIn(EMAIL, PASSWORD, "").statusCode()).isEqualTo(429);
        site.clock().advance(Duration.ofMinutes(15));
        assertThat(signIn(EMAIL, PASSWORD, "").statusCode()).isEqualTo(303);
    }

    /** Strangers who try an account do not lock its owner out of a browser that they have used before. */
    @Test
    void aBrowserThatItsOwnerHasUsedIsCountedApart() {
        String known = signIn(EMAIL, PASSWORD, "").cookie("known");
        for (int i = 0; i < 30; i++) {
            signIn(EMAIL, "wrong for the " + i + "th time", "");
        }
        var stranger = signIn(EMAIL, PASSWORD, "");
        assertThat(stranger.statusCode()).isEqualTo(429);
        assertThat(stranger.asString()).contains(EMAIL, "type=\"password\"").doesNotContain(PASSWORD);
        assertThat(Html.mistakes(stranger.asString())).isEmpty();
        assertThat(signInWith(known, EMAIL).statusCode()).isEqualTo(303);
        assertThat(signInWith(known, "other@trial.example").statusCode()).isNotEqualTo(303);
        assertThat(signInWith(known + "x", EMAIL).statusCode()).isEqualTo(429);
    }

    private static Response signInWith(String mark, String email) {
        return site.form()
                .cookie("known", mark)
                .formParam("email", email)
                .formParam("password", PASSWORD)
                .post("/desk/sign-in");
    }

    @Test
    void signingOutEndsTheSession() {
        var cookie = site.atTheDesk();
        site.form().cookie(cookie).post("/desk/sign-out").then().statusCode(303);
        site.browser().cookie(cookie).get("/desk").then().statusCode(303);
    }

    @Test
    void aNewPasswordEndsTheOtherSessions() {
        try (var fresh = Site.open()) {
            var here = fresh.atTheDesk();
            var elsewhere = fresh.atTheDesk();
            var answer = fresh.form()
                    .cookie(here)
                    .formParam("present", PASSWORD)
                    .formParam("chosen", "another one for trials")
                    .post("/desk/account");
            assertThat(answer.statusCode()).isEqualTo(303);
            fresh.browser().cookie(elsewhere).get("/desk").then().statusCode(303);
            fresh.browser().cookie(here).get("/desk").then().statusCode(303);
            fresh.browser()
                    .cookie("session", answer.cookie("session"))
                    .get("/desk/account")
                    .then()
                    .statusCode(200);
        }
    }

    @Test
    void aWrongPresentPasswordChangesNothing() {
        var cookie = site.atTheDesk();
        site.form()
                .cookie(cookie)
                .formParam("present", "not this one")
                .formParam("chosen", "another one for trials")
                .post("/desk/account")
                .then()
                .statusCode(422)
                .body(containsString("This is not your present password"), not(containsString("another one for")));
        site.browser().cookie(cookie).get("/desk").then().statusCode(200);
        assertThat(record(site)).first().satisfies(entry -> {
            assertThat(entry.who()).isEqualTo(site.educator().value());
            assertThat(entry.what()).isEqualTo("present.refused");
            assertThat(entry.detail()).doesNotContain("not this one", "another one");
        });
    }

    /** What the desk's record has of all that was done, newest first. */
    private static List<AuditEntry> record(Site site) {
        return new Audit(site.groundbass().database().jdbi(), site.clock()).latest(20);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk/sign-in", "/desk/set-up", "/desk/account", "/desk/sign-out"})
    void noOtherSiteCanSendTheseForms(String path) {
        site.browser()
                .cookie(site.atTheDesk())
                .header("Sec-Fetch-Site", "cross-site")
                .post(path)
                .then()
                .statusCode(403);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk", "/desk/series/new", "/desk/account"})
    void aStrangerIsSentToSignInAndBack(String path) {
        String next = path.replace("/", "%2F");
        site.browser().get(path).then().statusCode(303).header("Location", endsWith("/desk/sign-in?next=" + next));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/desk/sign-in", "/desk/account"})
    void pagesConformToHtml(String path) {
        String page = site.browser().cookie(site.atTheDesk()).get(path).asString();
        assertThat(Html.mistakes(page)).isEmpty();
    }

    @Test
    void theSetUpPageConformsToHtml() {
        try (var fresh = Site.open()) {
            assertThat(Html.mistakes(fresh.browser().get("/desk/set-up").asString()))
                    .isEmpty();
            assertThat(Html.mistakes(setUp(fresh, "").asString())).isEmpty();
        }
    }

    private static Response signIn(String email, String password, String next) {
        site.educator();
        return site.form()
                .formParam("email", email)
                .formParam("password", password)
                .formParam("next", next)
                .post("/desk/sign-in");
    }
}
