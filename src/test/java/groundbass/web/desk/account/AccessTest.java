package groundbass.web.desk.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import groundbass.audience.student.Person;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educators;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.site.Config;
import groundbass.web.Html;
import groundbass.web.Site;
import groundbass.web.desk.Studio;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class AccessTest {
    private static final String EMAIL = "desk@trial.example";
    private static final String PASSWORD = "a password for trials";
    private static final String NEW = "quartz lantern boat seven";

    static final Site site = Site.open(AccessTest::withMail);

    @AfterAll
    static void close() {
        site.close();
    }

    @BeforeEach
    void waitUntilNobodyRemembersEarlierTries() {
        site.educator();
        site.clock().advance(Duration.ofHours(2));
    }

    @Test
    void theSignInPageLeadsToANewPassword() {
        site.browser().get("/desk/sign-in").then().body(containsString("href=\"/desk/forgotten\""));
        try (var fresh = Site.open()) {
            fresh.educator();
            var session = fresh.atTheDesk();
            fresh.browser().get("/desk/forgotten").then().body(containsString("sends no mail"));
            ask(fresh, EMAIL).then().statusCode(303);
            assertThat(letters(fresh))
                    .as("another educator could read it on the desk")
                    .isEmpty();
            fresh.browser().cookie(session).get("/desk").then().statusCode(200);
        }
    }

    @Test
    void aForgottenPasswordIsSetAnewByALinkAndEverySessionEnds() {
        try (var own = Site.open(AccessTest::withMail)) {
            own.educator();
            var open = own.atTheDesk();
            ask(own, EMAIL).then().statusCode(303).header("Location", endsWith("/desk/forgotten/sent"));
            String link = mailed(own);
            own.browser().get(link).then().statusCode(200);
            choose(own, link, "qwertyuiopas")
                    .then()
                    .statusCode(422)
                    .body(containsString("lists of common passwords"), not(containsString("qwertyuiopas")));
            choose(own, link, NEW).then().statusCode(303).header("Location", endsWith("/desk/sign-in"));
            choose(own, link, NEW).then().statusCode(410);
            own.browser().get(link).then().statusCode(410);
            own.browser().cookie(open).get("/desk").then().statusCode(303);
            assertThat(signIn(own, EMAIL, PASSWORD).statusCode()).isEqualTo(422);
            assertThat(signIn(own, EMAIL, NEW).statusCode()).isEqualTo(303);
        }
    }

    /** OWASP Forgot Password Cheat Sheet: one answer whether or not the account exists. */
    @Test
    void theAnswerDoesNotTellWhoTeachesHere() {
        var known = ask(site, EMAIL);
        var unknown = ask(site, "nobody@trial.example");
        assertThat(known.statusCode()).isEqualTo(unknown.statusCode()).isEqualTo(303);
        assertThat(known.header("Location")).isEqualTo(unknown.header("Location"));
        assertThat(known.getCookies()).isEqualTo(unknown.getCookies());
        assertThat(known.asString()).isEqualTo(unknown.asString());
    }

    @Test
    void sessionsAreListedAndEndedOneByOneAndTogether() {
        try (var own = Site.open(AccessTest::withMail)) {
            var here = signedIn(own, "Mozilla/5.0 (X11; Linux x86_64)");
            var phone = signedIn(own, "Mozilla/5.0 (Linux; Android 14) Mobile");
            var lost = signedIn(own, "fetcher/1.0");
            String page = own.browser().cookie(here).get("/desk/account").asString();
            assertThat(page).contains("Browser on a computer", "Browser on a phone", "A program", "This one");
            assertThat(Html.mistakes(page)).isEmpty();
            String number = Jsoup.parse(page).select(".session-list li").stream()
                    .filter(row -> row.text().contains("A program"))
                    .map(row -> row.select("input[name=number]").val())
                    .findFirst()
                    .orElseThrow();
            own.form()
                    .cookie(here)
                    .formParam("number", number)
                    .post("/desk/account/sessions")
                    .then()
                    .statusCode(303);
            own.browser().cookie(lost).get("/desk").then().statusCode(303);
            own.browser().cookie(phone).get("/desk").then().statusCode(200);
            own.form().cookie(here).post("/desk/account/sessions/all").then().statusCode(303);
            for (Cookie ended : List.of(here, phone)) {
                own.browser().cookie(ended).get("/desk").then().statusCode(303);
            }
        }
    }

    /** Nobody ends a session of another person by its number. */
    @Test
    void aStrangersSessionIsNotTheirs() {
        try (var studio = new Studio()) {
            var jdbi = studio.site.groundbass().database().jdbi();
            var other = new Educators(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock())
                    .withEmail("other@trial.example")
                    .orElseThrow();
            var stranger = studio.site.signedIn(new Person.OfEducator(other.id()));
            String hash = jdbi.withHandle(
                    handle -> handle.createQuery("select token_hash from session where educator_id = :me")
                            .bind("me", studio.site.educator().value())
                            .mapTo(String.class)
                            .first());
            for (String number : List.of(hash.substring(0, 16), "%", "0000000000000000")) {
                studio.site.form().cookie(stranger).formParam("number", number).post("/desk/account/sessions");
            }
            studio.browser().get("/desk").then().statusCode(200);
        }
    }

    @Test
    void goodAndBadSignInsAreOnTheRecordWithoutStrangersAddresses() {
        try (var own = Site.open(AccessTest::withMail)) {
            own.educator();
            signIn(own, EMAIL, "something else entirely");
            signIn(own, "private@stranger.example", "something else entirely");
            var in = signIn(own, EMAIL, PASSWORD);
            String page = own.browser()
                    .cookie("session", in.cookie("session"))
                    .get("/desk/audit")
                    .asString();
            assertThat(page)
                    .contains("Sign-in refused", "somebody unknown", "Signed in", "Trial Studio", "with a password");
            assertThat(page).doesNotContain("stranger.example");
            assertThat(Html.mistakes(page)).isEmpty();
            var kept = new Audit(own.groundbass().database().jdbi(), own.clock()).latest(20);
            assertThat(kept).extracting(AuditEntry::what).contains("sign-in.done", "sign-in.refused");
            // of three requests, each by its own id (OWASP ASVS 5.0, 16.2.1)
            assertThat(kept.stream()
                            .filter(entry -> entry.what().startsWith("sign-in."))
                            .map(entry -> entry.request().orElseThrow()))
                    .hasSize(3)
                    .doesNotHaveDuplicates();
            assertThat(kept)
                    .filteredOn(entry -> entry.what().equals("educator.created"))
                    .allMatch(entry -> entry.request().isEmpty());
            assertThat(kept.toString()).doesNotContain("stranger.example").doesNotContain(EMAIL);
        }
    }

    @Test
    void theRecordIsTurnedPageByPage() {
        try (var own = Site.open()) {
            var desk = own.atTheDesk();
            var audit = new Audit(own.groundbass().database().jdbi(), own.clock());
            for (int i = 0; i < AuditPages.A_PAGE; i++) {
                audit.note(Audit.OPERATOR, AuditWord.SESSIONS_ENDED, "entry " + i);
            }
            String first = own.browser().cookie(desk).get("/desk/audit").asString();
            assertThat(first).contains("entry 99", "page=2").doesNotContain("Desk opened");
            String second = own.browser().cookie(desk).get("/desk/audit?page=2").asString();
            assertThat(second).contains("Desk opened", "page=1").doesNotContain("page=3");
        }
    }

    @Test
    void nameAndAddressAreChangedAndTheOldAddressIsTold() {
        try (var own = Site.open(AccessTest::withMail)) {
            var desk = own.atTheDesk();
            own.form()
                    .cookie(desk)
                    .formParam("name", "New \"Name\"")
                    .formParam("email", "new@trial.example")
                    .formParam("known", "not the password")
                    .post("/desk/account/who")
                    .then()
                    .statusCode(422)
                    .body(containsString("New &quot;Name&quot;"), containsString("known-problem"));
            own.form()
                    .cookie(desk)
                    .formParam("name", "New Name")
                    .formParam("email", "new@trial.example")
                    .formParam("known", PASSWORD)
                    .post("/desk/account/who")
                    .then()
                    .statusCode(303);
            assertThat(signIn(own, "new@trial.example", PASSWORD).statusCode()).isEqualTo(303);
            assertThat(letters(own)).anyMatch(text -> text.contains("Your address at"));
        }
    }

    @Test
    void pagesConformToHtml() {
        for (String path : List.of("/desk/forgotten", "/desk/forgotten/sent", "/desk/reset/none", "/desk/sign-in")) {
            assertThat(Html.mistakes(site.browser().get(path).asString()))
                    .as(path)
                    .isEmpty();
        }
    }

    /** Mail leaves for a server that is not there (RFC 6761 section 6.4), so that every e-mail waits in the outbox. */
    private static Config withMail(Config config) {
        return config.with(new Config.MailServer(
                "mail.invalid", 2525, Optional.empty(), Optional.empty(), new EmailAddress("site@trial.example")));
    }

    private static Cookie signedIn(Site own, String program) {
        own.educator();
        var answer = own.form()
                .header("User-Agent", program)
                .formParam("email", EMAIL)
                .formParam("password", PASSWORD)
                .post("/desk/sign-in");
        return new Cookie.Builder("session", answer.cookie("session")).build();
    }

    private static Response signIn(Site own, String email, String password) {
        return own.form()
                .formParam("email", email)
                .formParam("password", password)
                .post("/desk/sign-in");
    }

    private static Response ask(Site own, String email) {
        return own.form().formParam("email", email).post("/desk/forgotten");
    }

    private static Response choose(Site own, String link, String password) {
        return own.form().formParam("chosen", password).post(link);
    }

    private static List<String> letters(Site own) {
        return new Outbox(own.groundbass().database().jdbi(), own.clock())
                .newest(20).stream()
                        .map(letter -> letter.message().subject() + "\n"
                                + letter.message().text())
                        .toList();
    }

    /** The path in the newest letter that has one. */
    private static String mailed(Site own) {
        return letters(own).stream()
                .flatMap(String::lines)
                .filter(line -> line.contains("/desk/reset/"))
                .map(line -> line.substring(line.indexOf("/desk/reset/")).strip())
                .findFirst()
                .orElseThrow();
    }
}
