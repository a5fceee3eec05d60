package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;

import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Withdrawal;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.web.desk.Studio;
import io.restassured.http.Cookie;
import java.time.Duration;
import java.util.Locale;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** News by e-mail from both sides: asked for, agreed to, ended; its words chosen and looked at at the desk. */
class NewsPathTest {
    static final Studio studio = new Studio();
    static final Site site = studio.site;
    static final Episode lesson = out();

    /** That it is out is all that matters here; its files are no part of the news. */
    private static Episode out() {
        var episode = studio.episode("Rope & Pulley");
        var jdbi = site.groundbass().database().jdbi();
        var episodes = new Episodes(jdbi);
        jdbi.useTransaction(handle ->
                episodes.markPublished(handle, episode.id(), site.clock().instant()));
        return episodes.find(episode.id()).orElseThrow();
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    @BeforeEach
    void letTheLimitsFill() {
        site.clock().advance(Duration.ofHours(1));
    }

    private static final String ASK = "/series/low-tide/news";

    private static String mailedLink(String email) {
        site.form()
                .formParam("email", email)
                .post(ASK)
                .then()
                .statusCode(303)
                .header("Location", endsWith("/news/sent"));
        var outbox = new Outbox(site.groundbass().database().jdbi(), site.clock());
        String text = outbox.to(new EmailAddress(email)).get(0).message().text();
        return text.lines()
                .filter(line -> line.startsWith("https://studio.example/news/"))
                .map(line -> line.substring("https://studio.example".length()))
                .findFirst()
                .orElseThrow();
    }

    private static long readers(String where) {
        return site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select count(*) from news_reader where " + where)
                .mapTo(Long.class)
                .one());
    }

    private static String key(String email) {
        var readers = new NewsReaders(site.groundbass().database().jdbi(), site.clock());
        return readers.key(readers.of(new EmailAddress(email)).get(0).id());
    }

    @Test
    void everyPageOfItConforms() {
        String link = mailedLink("pages@reader.example");
        for (String path : new String[] {ASK, "/news/sent", link}) {
            assertThat(Html.mistakes(site.browser().get(path).asString()))
                    .as(path)
                    .isEmpty();
        }
        assertThat(Html.mistakes(site.form().post(link).asString())).isEmpty();
        assertThat(Html.mistakes(site.browser().get(link).asString())).isEmpty();
        String end = "/news/end/" + key("pages@reader.example");
        assertThat(Html.mistakes(site.browser().get(end).asString())).isEmpty();
        assertThat(Html.mistakes(site.form().post(end).asString())).isEmpty();
    }

    @Test
    void openingTheLinkAgreesToNothingAndTheButtonDoesOnce() {
        String link = mailedLink("once@reader.example");
        site.browser().get(link).then().statusCode(200).body(containsString("Low Tide"));
        site.browser().head(link).then().statusCode(200);
        assertThat(readers("email = 'once@reader.example'")).isZero();
        site.form().post(link).then().statusCode(200).body(containsString("You will hear of it"));
        site.form().post(link).then().statusCode(410).body(containsString("used already"));
        assertThat(readers("email = 'once@reader.example' and asked_on = 'series' and wording like '%Low Tide%'"))
                .isEqualTo(1);
        site.browser().get("/news/nonsense").then().statusCode(404);
    }

    @Test
    void askingAndAgreeingMustComeFromOurPages() {
        site.browser().formParam("email", "a@reader.example").post(ASK).then().statusCode(403);
        String link = mailedLink("cross@reader.example");
        site.browser().header("Sec-Fetch-Site", "cross-site").post(link).then().statusCode(403);
        assertThat(readers("email = 'cross@reader.example'")).isZero();
    }

    @Test
    void whatIsNoAddressComesBackAndAnUnknownSeriesIsNotThere() {
        site.form()
                .formParam("email", "no \"address\"")
                .post(ASK)
                .then()
                .statusCode(422)
                .body(containsString("no &quot;address&quot;"), containsString("email-problem"));
        site.form()
                .formParam("email", "a@reader.example")
                .post("/series/high-tide/news")
                .then()
                .statusCode(404);
    }

    /** RFC 8058 section 3.1: one POST with that body, without cookies or a sign-in, and no redirect in answer. */
    @Test
    void aMailProgramEndsItWithOneRequest() {
        site.form().post(mailedLink("gone@reader.example"));
        String end = "/news/end/" + key("gone@reader.example");
        site.browser().get(end).then().statusCode(200).body(containsString("End these e-mails"));
        assertThat(readers("email = 'gone@reader.example' and ended_at is null"))
                .as("looking ends nothing")
                .isEqualTo(1);
        for (int i = 0; i < 2; i++) {
            site.program()
                    .formParam("List-Unsubscribe", "One-Click")
                    .post(end)
                    .then()
                    .statusCode(200)
                    .body(containsString("It has ended"));
        }
        assertThat(readers("email = 'gone@reader.example' and ended_at is null"))
                .isZero();
        site.program()
                .formParam("List-Unsubscribe", "One-Click")
                .post(end + "x")
                .then()
                .statusCode(404);
    }

    @Test
    void aStudentWhoIsSignedInBeginsAndEndsItWithOnePress() {
        var me = student("own@reader.example");
        var form = Jsoup.parse(site.browser().cookie(me).get(ASK).asString());
        assertThat(form.select("[name=email]").val()).isEqualTo("own@reader.example");
        assertThat(Jsoup.parse(site.browser().cookie(me).get("/me").asString()).select("#news"))
                .hasSize(1);
        site.form()
                .cookie(me)
                .formParam("series", studio.series.id().value())
                .post("/me/news/begin")
                .then()
                .statusCode(303);
        assertThat(readers("email = 'own@reader.example' and asked_on = 'account' and ended_at is null"))
                .isEqualTo(1);
        assertThat(site.browser().cookie(me).get("/me").asString()).contains("You get these e-mails");
        site.browser().cookie(me).get("/me/data.json").then().body("news[0].series", equalTo("Low Tide"));
        site.form().cookie(me).formParam("language", "de").post("/me/language");
        assertThat(readers("email = 'own@reader.example' and locale = 'de'")).isEqualTo(1);
        site.form()
                .cookie(me)
                .formParam("series", studio.series.id().value())
                .post("/me/news/end")
                .then()
                .statusCode(303);
        assertThat(readers("email = 'own@reader.example' and ended_at is null")).isZero();
        site.form().cookie(me).post("/me/delete");
        assertThat(readers("email = 'own@reader.example'")).isZero();
        site.form()
                .formParam("series", studio.series.id().value())
                .post("/me/news/begin")
                .then()
                .statusCode(401);
    }

    /** Withdrawing consent is as easy as giving it: Regulation (EU) 2016/679, article 7 paragraph 3. */
    @Test
    void whatWasAgreedToIsEndedAlsoWhereAllOfTheSeriesWasTakenBack() {
        var me = student("back@reader.example");
        String series = studio.series.id().value();
        site.form().cookie(me).formParam("series", series).post("/me/news/begin");
        var jdbi = site.groundbass().database().jdbi();
        var episodes = new Episodes(jdbi);
        var withdrawal = new Withdrawal(site.clock().instant(), "");
        jdbi.useTransaction(handle -> episodes.takeBack(handle, lesson.id(), withdrawal));
        try {
            var page = Jsoup.parse(site.browser().cookie(me).get("/me").asString());
            assertThat(page.select("form[action=/me/news/end] input[value=" + series + "]"))
                    .hasSize(1);
            assertThat(page.select("a[href=/series/low-tide]")).isEmpty();
            site.form()
                    .cookie(me)
                    .formParam("series", series)
                    .post("/me/news/end")
                    .then()
                    .statusCode(303);
            assertThat(readers("email = 'back@reader.example' and ended_at is null"))
                    .isZero();
            site.form()
                    .cookie(me)
                    .formParam("series", series)
                    .post("/me/news/begin")
                    .then()
                    .statusCode(404);
            site.browser().get(ASK).then().statusCode(404);
        } finally {
            jdbi.useTransaction(handle -> episodes.putBack(handle, lesson.id()));
        }
    }

    private static Cookie student(String email) {
        var jdbi = site.groundbass().database().jdbi();
        var students = new Students(jdbi, new Outbox(jdbi, site.clock()), new Audit(jdbi, site.clock()), site.clock());
        StudentId id = jdbi.inTransaction(handle -> students.create(handle, new EmailAddress(email), Locale.ENGLISH))
                .id();
        return site.signedIn(new Person.OfStudent(id));
    }

    @Test
    void theEducatorChoosesTheWordsSeesThemAndGetsOne() {
        String path = "/desk/series/" + studio.series.id() + "/news";
        String page = studio.browser().get(path).asString();
        assertThat(Html.mistakes(page)).isEmpty();
        assertThat(page).contains("New in Low Tide: Rope &amp; Pulley");

        studio.form()
                .formParam("subject", "[number]: [title]")
                .formParam("opening", "Look.")
                .post(path + "/look")
                .then()
                .statusCode(200)
                .body(containsString("1: Rope &amp; Pulley"));
        assertThat(studio.browser().get(path).asString())
                .as("looking saves nothing")
                .contains("New in Low Tide");
        studio.form()
                .formParam("subject", "x".repeat(201))
                .formParam("opening", "Kept as typed")
                .post(path)
                .then()
                .statusCode(422)
                .body(containsString("Kept as typed"), containsString("subject-problem"));
        studio.form()
                .formParam("subject", "Mine: [title]")
                .formParam("opening", "Look.")
                .post(path)
                .then()
                .statusCode(303);
        assertThat(studio.browser().get(path).asString()).contains("Mine: Rope &amp; Pulley");

        studio.form().post(path + "/test").then().statusCode(303).header("Location", containsString("/desk/outbox/"));
        var letter = new Outbox(site.groundbass().database().jdbi(), site.clock())
                .to(new EmailAddress("desk@trial.example"))
                .get(0)
                .message();
        assertThat(letter.subject()).isEqualTo("Mine: Rope & Pulley");
        assertThat(letter.unsubscribe()).as("it is to one person").isEmpty();
        studio.form()
                .formParam("subject", "")
                .formParam("opening", "")
                .post(path)
                .then()
                .statusCode(303);
    }

    @Test
    void theWordsAreNobodyElsesToChoose() {
        String theirs = "/desk/series/" + studio.strangersEpisode.series() + "/news";
        studio.browser().get(theirs).then().statusCode(404);
        studio.form().formParam("subject", "x").post(theirs).then().statusCode(404);
        studio.form().post(theirs + "/test").then().statusCode(404);
        site.form().post("/desk/series/" + studio.series.id() + "/news").then().statusCode(401);
    }

    @Test
    void theAnnouncementIsThereToBeCopied() {
        String page = studio.browser()
                .get("/desk/episodes/" + lesson.id() + "/publish")
                .asString();
        assertThat(Html.mistakes(page)).isEmpty();
        var read = Jsoup.parse(page);
        assertThat(read.select("#told-plain").text()).contains("https://studio.example/e/" + lesson.id());
        assertThat(read.select("#told-html").text()).contains("<a href=\"https://studio.example/e/" + lesson.id());
        assertThat(read.select("#below-video").text())
                .startsWith("Rope & Pulley")
                .contains("https://studio.example/e/" + lesson.id());
    }
}
