package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import groundbass.catalog.episode.Withdrawal;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.web.Html;
import groundbass.web.Site;
import groundbass.web.student.account.SignInPages;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignInTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);

    @AfterAll
    static void close() {
        site.close();
    }

    @BeforeEach
    void letTheLimitsFill() {
        site.clock().advance(Duration.ofHours(1));
    }

    @Test
    void openingTheLinkDoesNotUseItUpAndTheButtonDoesOnce() {
        String link = link("once@reader.example");
        site.browser().get(link).then().statusCode(200).body(containsString("Sign me in"));
        site.browser().get(link).then().statusCode(200);
        site.browser().head(link).then().statusCode(200);
        site.form().post(link).then().statusCode(303);
        site.form().post(link).then().statusCode(410).body(containsString("used already"));
        site.browser().get(link).then().statusCode(410);
    }

    /** An educator at the desk has no student's account: what they practise stays in the browser, and nothing is asked for. */
    @Test
    void whoIsAtTheDeskIsNoStudentOnTheSite() {
        String student = signIn("both@reader.example");
        var desk = site.atTheDesk();
        for (String page : List.of("/", "/practised", PlayVisit.LESSON)) {
            var atDesk = Jsoup.parse(site.browser().cookie(desk).get(page).asString());
            assertThat(atDesk.select("[data-practised]").eachAttr("data-signed-in"))
                    .as(page)
                    .containsOnly("false");
            assertThat(atDesk.select(".nav a").eachAttr("href"))
                    .contains("/desk")
                    .doesNotContain("/me")
                    .noneMatch(href -> href.startsWith("/sign-in"));
            var asStudent = Jsoup.parse(
                    site.browser().cookie("session", student).get(page).asString());
            assertThat(asStudent.select("[data-practised]").eachAttr("data-signed-in"))
                    .containsOnly("true");
        }
    }

    /**
     * Regulation (EU) 2016/679, article 8: below an age a guardian has to agree. Whoever types an address may be anybody; the
     * one who holds it is asked, once, and before there is an account nothing is kept. What was wanted still waits.
     */
    @Test
    void whereAnAgeIsSetTheHolderOfTheAddressIsAskedOnce() {
        String wanted = "/series/" + Shelf.SERIES + "/2?wanted=sheet.pdf";
        rules("", "16");
        try {
            assertThat(site.browser().get("/sign-in").asString()).doesNotContain("name=\"age\"");
            var asked = ask("young@reader.example", wanted);
            String link = mailed("young@reader.example");
            String page = site.browser().get(link).asString();
            assertThat(Html.mistakes(page)).isEmpty();
            assertThat(Jsoup.parse(page).text()).contains("I am 16 or older", "asked once");
            var again = site.form().cookies(asked.cookies()).post(link);
            assertThat(again.statusCode()).isEqualTo(422);
            assertThat(Html.mistakes(again.asString())).isEmpty();
            assertThat(Jsoup.parse(again.asString()).select("#age-problem").text())
                    .contains("Say which");
            assertThat(again.cookies()).doesNotContainKey("session");
            assertThat(isKnown("young@reader.example")).isFalse();

            var in = site.form()
                    .cookies(asked.cookies())
                    .formParam("age", "guardian")
                    .post(link);
            assertThat(in.header("Location")).endsWith(wanted);
            site.browser()
                    .cookie("session", in.cookie("session"))
                    .get("/me/data.json")
                    .then()
                    .body("consents.wording", hasItem("age-1 guardian 16"))
                    .body("consents.purpose", hasItem("age"))
                    .body("lastUsed", notNullValue());
            site.clock().advance(Duration.ofSeconds(1)); // so that it is clear which e-mail is the newest
            String next = link("young@reader.example");
            assertThat(site.browser().get(next).asString()).doesNotContain("name=\"age\"");
            assertThat(site.form().post(next).statusCode()).isEqualTo(303);
        } finally {
            rules("", "");
        }
    }

    /** With the code the question comes after it: before, nobody is told whether an address has an account. */
    @Test
    void theCodeAsksForTheAgeToo() {
        rules("", "16");
        try {
            var asked = ask("codes@reader.example", "/cautions");
            String code = code("codes@reader.example");
            assertThat(site.browser()
                            .cookies(asked.cookies())
                            .get("/sign-in/sent")
                            .asString())
                    .doesNotContain("name=\"age\"");
            var question = Jsoup.parse(typed(asked, code).asString());
            assertThat(question.select("input[name=code]").val()).isEqualTo(code);
            assertThat(question.select("#age input[type=radio]")).hasSize(2);
            assertThat(question.select(".problem")).isEmpty();
            assertThat(isKnown("codes@reader.example")).isFalse();
            var overlooked = site.form()
                    .cookies(asked.cookies())
                    .formParam("code", code)
                    .formParam("ageAsked", "yes")
                    .post("/sign-in/code");
            assertThat(Jsoup.parse(overlooked.asString()).select("#age-problem"))
                    .isNotEmpty();
            site.form()
                    .cookies(asked.cookies())
                    .formParam("code", code)
                    .formParam("age", "of-age")
                    .post("/sign-in/code")
                    .then()
                    .statusCode(303)
                    .header("Location", endsWith("/cautions"));
            rules("", "18"); // of age at 16 says nothing of 18
            site.clock().advance(Duration.ofSeconds(1));
            assertThat(site.browser().get(link("codes@reader.example")).asString())
                    .contains("name=\"age\"");
        } finally {
            rules("", "");
        }
    }

    private static boolean isKnown(String email) {
        return site.groundbass()
                .database()
                .jdbi()
                .withHandle(handle -> handle.createQuery("select count(*) from student where email = :email")
                                .bind("email", email)
                                .mapTo(Integer.class)
                                .one()
                        > 0);
    }

    @Test
    void thePrivacyNoticeSaysWhenAccountsEnd() {
        assertThat(site.browser().get("/privacy").asString()).doesNotContain("end by themselves");
        rules("24", "");
        try {
            assertThat(site.browser().get("/privacy").asString()).contains("for 24 months end by themselves");
        } finally {
            rules("", "");
        }
    }

    private static void rules(String idleMonths, String age) {
        site.form()
                .cookie(site.atTheDesk())
                .formParam("idleMonths", idleMonths)
                .formParam("age", age)
                .post("/desk/settings/accounts")
                .then()
                .statusCode(303);
    }

    /** A session that has ended is none, though its cookie is still there. */
    @Test
    void aCookieWithoutASessionIsNobody() {
        var page = Jsoup.parse(
                site.browser().cookie("session", "of-long-ago").get("/").asString());
        assertThat(page.select(".nav a").eachAttr("href"))
                .contains("/sign-in?next=/")
                .doesNotContain("/me");
    }

    /** No mail server is set up here: what was asked for lies on the desk before the next pass of the post. */
    /** Without a turn of the clock; the pass that comes by each few seconds may have it in its hands just then. */
    @Test
    void aLetterThatCannotLeaveLiesOnTheDeskAtOnce() {
        ask("soon@reader.example", "/me");
        Shelf.await(() -> !deliveries("soon@reader.example").contains(Optional.<String>empty()));
        assertThat(deliveries("soon@reader.example")).containsExactly(Optional.of("on desk"));
    }

    /** What became of the letters to somebody; empty for one that is still under way. */
    private static List<Optional<String>> deliveries(String recipient) {
        return site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select delivery from outbox where recipient = :recipient")
                .bind("recipient", recipient)
                .map((row, context) -> Optional.ofNullable(row.getString("delivery")))
                .list());
    }

    @Test
    void aLinkRunsOut() {
        String link = link("late@reader.example");
        site.clock().advance(Duration.ofMinutes(20));
        site.form().post(link).then().statusCode(410).body(containsString("too old"));
        site.form().post("/sign-in/nonsense").then().statusCode(404);
    }

    @Test
    void anotherSiteCannotPressTheButton() {
        String link = link("cross@reader.example");
        site.browser().header("Sec-Fetch-Site", "cross-site").post(link).then().statusCode(403);
        site.browser()
                .header("Origin", "https://elsewhere.example")
                .post(link)
                .then()
                .statusCode(403);
        site.browser().get(link).then().statusCode(200);
    }

    @Test
    void theAnswerDoesNotTellWhoIsKnown() {
        signIn("known@reader.example");
        var known = ask("known@reader.example", "/me");
        var unknown = ask("unknown@reader.example", "/me");
        assertThat(known.statusCode()).isEqualTo(unknown.statusCode()).isEqualTo(303);
        assertThat(known.header("Location")).isEqualTo(unknown.header("Location"));
        assertThat(known.getCookies().keySet()).isEqualTo(unknown.getCookies().keySet());
        assertThat(known.cookie("way-back")).isEqualTo(unknown.cookie("way-back"));
        assertThat(unknown.cookie("asked")).as("what was typed").isEqualTo("unknown%40reader.example");
    }

    @Test
    void theReaderComesBackToWhereTheyWere() {
        var asked = ask("back@reader.example", "/series/" + Shelf.SERIES + "/2?x=ä");
        site.form()
                .cookie("way-back", asked.cookie("way-back"))
                .post(mailed("back@reader.example"))
                .then()
                .statusCode(303)
                .header("Location", containsString("/series/" + Shelf.SERIES + "/2?x="));
    }

    /** OWASP's cheat sheet on unvalidated redirects lists such ways out. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example",
                "/\\elsewhere.example",
                "javascript:x",
                "%2f%2felsewhere.example"
            })
    void nobodyIsSentElsewhere(String next) {
        String email = "r" + Math.abs(next.hashCode()) + "@reader.example";
        ask(email, next);
        site.form()
                .cookie("way-back", java.net.URLEncoder.encode(next, java.nio.charset.StandardCharsets.UTF_8))
                .post(mailed(email))
                .then()
                .statusCode(303)
                .header("Location", endsWith("/me"));
        site.browser().queryParam("next", next).get("/sign-in").then().body(containsString("value=\"/me\""));
    }

    @Test
    void whatIsNoAddressComesBackWithWhatWasTyped() {
        site.form()
                .formParam("email", "no \"address\"")
                .post("/sign-in")
                .then()
                .statusCode(422)
                .body(containsString("no &quot;address&quot;"), containsString("email-problem"));
    }

    @Test
    void askingTooOftenIsRefusedForAWhile() {
        for (int i = 0; i < 10; i++) {
            ask("often@reader.example", "/me");
        }
        var refused = ask("often@reader.example", "/me");
        assertThat(refused.statusCode()).isEqualTo(429);
        assertThat(refused.header("Retry-After")).isNotNull();
    }

    /** A refusal loses nothing: it names the wait, and the form is there to be sent again, by a script or by hand. */
    @Test
    void aRefusalKeepsWhatWasTypedAndNamesTheWait() {
        for (int i = 0; i < 10; i++) {
            ask("kept@reader.example", "/me");
        }
        String page = ask("kept@reader.example", "/me").asString();
        assertThat(page)
                .contains(
                        "It can be done again in 90 seconds", "kept@reader.example", "action=\"/sign-in\"", "Try again")
                .contains("data-seconds=\"90\"");
        assertThat(Html.mistakes(page)).isEmpty();
    }

    /** A class of forty behind one address: all ask, all come in, and their teacher too. */
    @Test
    void aClassBehindOneAddressComesInAndSoDoesTheTeacher() {
        int in = 0;
        for (int i = 0; i < 40; i++) {
            in += site.form().post(link("pupil-" + i + "@school.example")).statusCode() == 303 ? 1 : 0;
        }
        assertThat(in).isEqualTo(40);
        site.educator();
        site.form()
                .formParam("email", "desk@trial.example")
                .formParam("password", "a password for trials")
                .post("/desk/sign-in")
                .then()
                .statusCode(303);
    }

    @Test
    void withoutAMailServerThePageSaysWhereTheLetterLies() {
        site.browser()
                .get("/sign-in")
                .then()
                .body(containsString("E-mails lie on the desk"), containsString("/privacy"));
    }

    @Test
    void meIsForStudentsOnly() {
        site.browser().get("/me").then().statusCode(303).header("Location", endsWith("/sign-in?next=%2Fme"));
        site.program().get("/me/data.json").then().statusCode(401);
        site.browser().cookie(site.atTheDesk()).get("/me").then().statusCode(303);
    }

    @Test
    void meShowsWhatWasTakenAndGivesACopyOfIt() {
        String session = signIn("takes@reader.example");
        site.browser()
                .cookie("session", session)
                .get(shelf.file(1, "line.mid"))
                .then()
                .statusCode(200);
        Shelf.await(() ->
                site.browser().cookie("session", session).get("/me").asString().contains("complete"));
        site.browser()
                .cookie("session", session)
                .get("/me")
                .then()
                .statusCode(200)
                .header("Cache-Control", equalTo("no-store"))
                .body(containsString("First &lt;Plank&gt;"), containsString("line.mid"), containsString("complete"));
        site.program()
                .cookie("session", session)
                .get("/me/data.json")
                .then()
                .body("email", equalTo("takes@reader.example"))
                .body("downloads.file", hasItem("line.mid"))
                .body("downloads.lesson", hasItem("First <Plank>"))
                .body("sessions.device", hasItem("program"))
                .body("signInLinks.used[0]", notNullValue())
                .body("emails.subject", hasItem("Your sign-in link for Groundbass"))
                .body("consents.purpose", hasItem("account"))
                .body("consents.wording", hasItem(SignInPages.WORDING));
    }

    /** So the mail can be read on a phone, and the desk's browser is signed in. */
    @Test
    void aCodeSignsInTheBrowserThatAskedForIt() {
        var asked = ask("types@reader.example", "/cautions");
        String code = code("types@reader.example");
        String sent =
                site.browser().cookies(asked.cookies()).get("/sign-in/sent").asString();
        assertThat(Jsoup.parse(sent).select("#code").attr("autocomplete")).isEqualTo("one-time-code");
        var wrong = typed(asked, code.equals("123456") ? "654321" : "123456");
        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(Html.mistakes(wrong.asString())).isEmpty();
        site.form().formParam("code", code).post("/sign-in/code").then().statusCode(422);
        site.browser()
                .get("/sign-in/code") // where a choice of language leads from there
                .then()
                .statusCode(303)
                .header("Location", endsWith("/sign-in/sent"));
        var right = typed(asked, code.substring(0, 3) + " " + code.substring(3));
        assertThat(right.statusCode()).isEqualTo(303);
        assertThat(right.header("Location")).endsWith("/cautions");
        site.browser()
                .cookie("session", right.cookie("session"))
                .get("/me")
                .then()
                .statusCode(200);
        assertThat(typed(asked, code).statusCode()).as("used already").isEqualTo(422);
    }

    @Test
    void codesCannotBeTriedWithoutEnd() {
        var asked = ask("tried@reader.example", "/me");
        for (int tries = 0; tries < 10; tries++) {
            assertThat(typed(asked, "x").statusCode()).isEqualTo(422);
        }
        assertThat(typed(asked, code("tried@reader.example")).statusCode()).isEqualTo(429);
    }

    private static Response typed(Response asked, String code) {
        return site.form().cookies(asked.cookies()).formParam("code", code).post("/sign-in/code");
    }

    /** What a browser remembered joins the account, is in the copy of it, and can be forgotten; what is no mark is not. */
    @Test
    void whatWasPractisedJoinsTheAccount() {
        String session = signIn("plays@reader.example");
        String lesson = shelf.episode(1).id().value();
        String draft = shelf.episode(3).id().value();
        practised(session)
                .formParam("mark", lesson + ",line,2026-01-20,60,3.2&,4", lesson + ",exercise-1,2026-01-19,90,,")
                .formParam("mark", draft + ",line,2026-01-20,60,,", lesson + ",line,2999-01-01,60,,", "nothing")
                .formParam("star", lesson, draft)
                .post("/me/practised")
                .then()
                .statusCode(200)
                .body("lines.tempo", contains(60, 90))
                .body("lines[0].title", equalTo("First <Plank>"))
                .body("lines[0].from", equalTo("3.2&"))
                .body("stars.lesson", contains(lesson));
        site.program()
                .cookie("session", session)
                .get("/me/data.json")
                .then()
                .body("practised.lesson", contains("First <Plank>", "First <Plank>"))
                .body("practised.beatsAMinute", contains(60, 90))
                .body("favourites.episode", contains(lesson));
        practised(session)
                .formParam("forget", lesson)
                .post("/me/practised")
                .then()
                .body("lines", empty())
                .body("stars", empty());
    }

    /** A lesson that was taken back was practised all the same, and is forgotten as the notice about privacy promises. */
    @Test
    void whatWasPractisedOfALessonThatWasTakenBackIsKeptAndForgotten() {
        String session = signIn("remembers@reader.example");
        var lesson = shelf.episode(1).id();
        var jdbi = site.groundbass().database().jdbi();
        var withdrawal = new Withdrawal(site.clock().instant(), "");
        jdbi.useTransaction(handle -> shelf.episodes.takeBack(handle, lesson, withdrawal));
        try {
            practised(session)
                    .formParam("mark", lesson + ",line,2026-01-20,60,,")
                    .formParam("star", lesson.value())
                    .post("/me/practised")
                    .then()
                    .body("lines.lesson", contains(lesson.value()))
                    .body("stars.lesson", contains(lesson.value()));
            practised(session)
                    .formParam("forget", lesson.value())
                    .post("/me/practised")
                    .then()
                    .body("lines", empty())
                    .body("stars", empty());
        } finally {
            jdbi.useTransaction(handle -> shelf.episodes.putBack(handle, lesson));
        }
    }

    @Test
    void nobodyElseIsToldOrTellsWhatWasPractised() {
        site.form()
                .formParam("star", shelf.episode(1).id().value())
                .post("/me/practised")
                .then()
                .statusCode(401);
        String session = signIn("safe@reader.example");
        site.browser()
                .cookie("session", session)
                .header("Sec-Fetch-Site", "cross-site")
                .post("/me/practised")
                .then()
                .statusCode(403);
        String page = site.browser().get("/practised").asString();
        assertThat(Html.mistakes(page)).isEmpty();
        assertThat(Jsoup.parse(page).select("[data-practised]").attr("data-signed-in"))
                .isEqualTo("false");
        String own = site.browser().cookie("session", session).get("/practised").asString();
        assertThat(Jsoup.parse(own).select("[data-practised]").attr("data-signed-in"))
                .isEqualTo("true");
    }

    private static RequestSpecification practised(String session) {
        return site.form().cookie("session", session);
    }

    @Test
    void aStudentSeesWhereTheyAreSignedInAndEndsIt() {
        String here = signIn("devices@reader.example");
        site.clock().advance(Duration.ofSeconds(1)); // so that it is clear which e-mail is the newest
        String there = signIn("devices@reader.example");
        String other = signIn("someone@reader.example");
        var page = site.browser().cookie("session", here).get("/me");
        page.then().body(containsString("Where you are signed in"), containsString("This one"));
        String number =
                Jsoup.parse(page.asString()).select("input[name=number]").val();
        site.form().cookie("session", other).formParam("number", number).post("/me/sessions");
        site.browser().cookie("session", there).get("/me").then().statusCode(200);
        site.form()
                .cookie("session", here)
                .formParam("number", number)
                .post("/me/sessions")
                .then()
                .statusCode(303);
        site.browser().cookie("session", there).get("/me").then().statusCode(303);
        site.form().cookie("session", here).post("/me/sessions/all").then().statusCode(303);
        site.browser().cookie("session", here).get("/me").then().statusCode(303);
        site.browser().cookie("session", other).get("/me").then().statusCode(200);
    }

    @Test
    void theHeaderTellsWhetherOneIsSignedInAndTheWantedFileWaits() {
        String lesson = "/series/" + Shelf.SERIES + "/2";
        site.browser().get(lesson).then().body(containsString("/sign-in?next=" + lesson));
        String session = signIn("header@reader.example");
        site.browser()
                .cookie("session", session)
                .get(lesson)
                .then()
                .body(containsString("href=\"/me\""), not(containsString("/sign-in?next")));
        site.browser()
                .cookie("session", session)
                .get("/sign-in?next=" + lesson)
                .then()
                .statusCode(303)
                .header("Location", endsWith(lesson));
        String permanent = "/e/" + shelf.episode(2).id() + "?wanted=sheet.pdf";
        site.browser().get(permanent).then().statusCode(302).header("Location", endsWith(lesson + "?wanted=sheet.pdf"));
        var waiting = site.browser().cookie("session", session).get(lesson + "?wanted=sheet.pdf");
        waiting.then().body(containsString("What you wanted is waiting"));
        assertThat(Jsoup.parse(waiting.asString()).select(".wanted a").attr("href"))
                .isEqualTo(shelf.file(2, "sheet.pdf"));
        site.browser().get(lesson + "?wanted=page.json").then().statusCode(200).body(not(containsString("is waiting")));
    }

    @Test
    void theChosenLanguageIsSpokenFromThenOn() {
        String session = signIn("speaks@reader.example");
        var chosen = site.form()
                .cookie("session", session)
                .formParam("language", "de")
                .post("/me/language");
        site.browser()
                .cookie("session", session)
                .cookie("language", chosen.cookie("language"))
                .header("Accept-Language", "en")
                .get("/me")
                .then()
                .body(containsString("Deine Downloads"));
        site.program().cookie("session", session).get("/me/data.json").then().body("language", equalTo("de"));
    }

    @Test
    void aQuestionReachesTheDeskAtItsBarAndTheAnswerItsStudent() {
        String session = signIn("asks@reader.example");
        String path = "/e/" + shelf.episode(1).id() + "/ask";
        var form = site.browser()
                .cookie("session", session)
                .queryParam("place", "1.2&")
                .get(path);
        assertThat(Jsoup.parse(form.asString()).select("#place").attr("value")).isEqualTo("1.2&");
        assertThat(Html.mistakes(form.asString())).isEmpty();
        asking(session, "1.2&", "Which <finger> here?").post(path).then().statusCode(303);
        assertThat(lettersTo("desk@trial.example"))
                .contains("First <Plank> (bar 1, count 2&)", site.address() + "/desk/questions")
                .doesNotContain("Which <finger> here?");

        var desk = site.atTheDesk();
        site.browser().cookie(desk).get("/desk").then().body(containsString("href=\"/desk/questions\""));
        String page = site.browser().cookie(desk).get("/desk/questions").asString();
        assertThat(Html.mistakes(page)).isEmpty();
        var row = Jsoup.parse(page)
                .select(".letters > li:contains(asks@reader.example)")
                .first();
        assertThat(row.select("h2 a").attr("href")).endsWith(shelf.episode(1).id() + "/line#bar-1");
        assertThat(row.text())
                .contains("First <Plank>, bar 1, count 2&", "asks@reader.example", "Which <finger> here?");
        String answer = row.select("form").attr("action");
        site.form().cookie(desk).formParam("answer", " ").post(answer).then().statusCode(422);
        site.form()
                .cookie(desk)
                .formParam("answer", "The second.")
                .post(answer)
                .then()
                .statusCode(303);
        site.form()
                .cookie(desk)
                .formParam("answer", "Once more.")
                .post(answer)
                .then()
                .statusCode(422)
                .body(containsString("Once more."), containsString("settled already"));
        site.form()
                .formParam("answer", "The session was over.")
                .post(answer)
                .then()
                .statusCode(401)
                .body(containsString("The session was over."));
        assertThat(lettersTo("asks@reader.example")).contains("Which <finger> here?", "The second.");
        site.program()
                .cookie("session", session)
                .get("/me/data.json")
                .then()
                .body("questions.place", contains("1.2&"))
                .body("questions.answer", contains("The second."))
                .body("questions.outcome", contains("answered"));
        site.form().cookie("session", session).post("/me/delete").then().statusCode(303);
        site.browser().cookie(desk).get("/desk/questions").then().body(not(containsString("Which")));
    }

    @Test
    void aRightsProblemIsToldByEmailAndAtTheDeskOfItsLesson() {
        String session = signIn("owner@reader.example");
        String lesson = shelf.episode(2).id().value();
        asking(session, "", "The tune is mine.")
                .post("/e/" + lesson + "/rights-problem")
                .then()
                .statusCode(303);
        assertThat(lettersTo("desk@trial.example"))
                .contains("reports a rights problem", "(the whole lesson)")
                .doesNotContain("The tune is mine.");
        String path = "/desk/episodes/" + lesson + "/questions";
        String page = site.browser().cookie(site.atTheDesk()).get(path).asString();
        var row = Jsoup.parse(page).select(".letters > li").first();
        assertThat(row.text()).contains("Rights problem", "the whole lesson");
        site.form()
                .cookie(site.atTheDesk())
                .formParam("then", "corrected")
                .post(row.select("form").attr("action"))
                .then()
                .statusCode(303);
        assertThat(lettersTo("owner@reader.example"))
                .contains("being corrected", "the rights problem that you reported")
                .doesNotContain("your question");
    }

    /** What was typed stands in the form again, whatever is wrong with it. */
    @Test
    void aQuestionThatCannotBeSentIsNotLost() {
        String path = "/e/" + shelf.episode(1).id() + "/ask";
        site.browser().get(path).then().statusCode(303).header("Location", containsString("/sign-in?next="));
        asking("nobody", "3", "Typed for long")
                .post(path)
                .then()
                .statusCode(422)
                .body(containsString("Typed for long"), containsString("not signed in any more"));
        String session = signIn("types@reader.example");
        asking(session, "bar three", "Where?")
                .post(path)
                .then()
                .statusCode(422)
                .body(containsString("“bar three” is no place"), containsString("Where?"));
        asking(session, "", "x".repeat(2001)).post(path).then().statusCode(422).body(containsString("2,001"));
        String draft = shelf.episode(3).id().value();
        site.browser()
                .cookie("session", session)
                .get("/e/" + draft + "/ask")
                .then()
                .statusCode(404);
        for (int letters = 0; letters < 10; letters++) {
            asking(session, "", "Again?").post(path).then().statusCode(303);
        }
        String refused = asking(session, "2", "Once too often?")
                .post(path)
                .then()
                .statusCode(429)
                .header("Retry-After", notNullValue())
                .extract()
                .asString();
        assertThat(Jsoup.parse(refused).select("textarea#words").text()).isEqualTo("Once too often?");
        assertThat(Jsoup.parse(refused).select("#place").attr("value")).isEqualTo("2");
    }

    private static RequestSpecification asking(String session, String place, String words) {
        return site.form().cookie("session", session).formParam("place", place).formParam("words", words);
    }

    /** All letters to an address, one after the other. */
    private static String lettersTo(String email) {
        return new Outbox(site.groundbass().database().jdbi(), site.clock())
                .to(new EmailAddress(email)).stream()
                        .map(letter -> letter.message().text())
                        .collect(Collectors.joining("\n"));
    }

    @Test
    void signingOutEndsTheSession() {
        String session = signIn("leaves@reader.example");
        site.form().cookie("session", session).post("/sign-out").then().statusCode(303);
        site.browser().cookie("session", session).get("/me").then().statusCode(303);
    }

    @Test
    void anAccountIsDeletedWithAllThatTellsWhoItWas() {
        String session = signIn("gone@reader.example");
        site.browser()
                .cookie("session", session)
                .get(shelf.file(2, "line.txt"))
                .then()
                .statusCode(200);
        site.browser().cookie("session", session).get("/me/delete").then().body(containsString("gone@reader.example"));
        site.form().cookie("session", session).post("/me/delete").then().statusCode(303);
        site.browser().cookie("session", session).get("/me").then().statusCode(303);
        String rows = site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select email from student union select recipient from outbox union select email from sign_in")
                .mapTo(String.class)
                .list()
                .toString());
        assertThat(rows).doesNotContain("gone@reader.example");
    }

    @Test
    void theFormsConformToHtml() {
        String session = signIn("html@reader.example");
        site.browser().cookie("session", session).get(shelf.file(1, "line.txt"));
        assertThat(Html.mistakes(site.browser().get("/sign-in").asString())).isEmpty();
        for (String path : new String[] {"/sign-in/sent", link("h2@reader.example"), "/me", "/me/delete"}) {
            String page = site.browser().cookie("session", session).get(path).asString();
            assertThat(Html.mistakes(page)).as(path).isEmpty();
        }
    }

    private static Response ask(String email, String next) {
        return site.form().formParam("email", email).formParam("next", next).post("/sign-in");
    }

    private static String link(String email) {
        assertThat(ask(email, "/me").statusCode()).isEqualTo(303);
        return mailed(email);
    }

    /** The session of somebody who has used a fresh link. */
    private static String signIn(String email) {
        return site.form().post(link(email)).cookie("session");
    }

    private static String code(String email) {
        var found = Pattern.compile("\\b\\d{6}\\b").matcher(newest(email));
        assertThat(found.find()).isTrue();
        return found.group();
    }

    /** The path in the newest letter to that address. */
    private static String mailed(String email) {
        return newest(email)
                .lines()
                .filter(line -> line.contains("/sign-in/"))
                .map(line -> line.substring(line.indexOf("/sign-in/")).strip())
                .findFirst()
                .orElseThrow();
    }

    private static String newest(String email) {
        var outbox = new Outbox(site.groundbass().database().jdbi(), site.clock());
        return outbox.newest(50).stream()
                .filter(letter -> letter.message().to().value().equals(email))
                .findFirst()
                .orElseThrow()
                .message()
                .text();
    }
}
