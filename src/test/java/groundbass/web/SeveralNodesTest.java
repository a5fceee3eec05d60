package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Level;
import groundbass.post.EmailAddress;
import groundbass.site.Config;
import groundbass.site.Groundbass;
import groundbass.site.Secret;
import groundbass.site.StartFailure;
import groundbass.store.BothDatabases;
import groundbass.store.bucket.BucketName;
import groundbass.store.bucket.ObjectServer;
import groundbass.web.desk.Sent;
import groundbass.web.desk.Studio;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two servers of one site: one PostgreSQL, one object store, two processes' worth of everything else. */
class SeveralNodesTest {
    private static final URI ADDRESS = URI.create("http://grooves.example");
    private static final String EMAIL = "desk@trial.example";
    private static final String URL = BothDatabases.migratedPostgresUrl();
    private static final BucketName BUCKET = ObjectServer.get().freshBucket();

    static final Site one = Site.open(SeveralNodesTest::ofTheSite);
    static final Site other = Site.open(SeveralNodesTest::ofTheSite);
    static final Cookie desk = one.atTheDesk();

    private static Config ofTheSite(Config config) {
        return config.with(Optional.of(new Config.DatabaseServer(URL, "postgres", new Secret(""))))
                .keptIn(BUCKET)
                .at(ADDRESS);
    }

    @AfterAll
    static void close() {
        one.close();
        other.close();
    }

    @BeforeEach
    void waitUntilNobodyRemembersEarlierTries() {
        pass(Duration.ofHours(1));
    }

    private static void pass(Duration time) {
        one.clock().advance(time);
        other.clock().advance(time);
    }

    @Test
    void whoeverSignsInAtOneIsSignedInAtTheOtherUntilTheyGo() {
        var answer = signIn(one, Site.PASSWORD);
        answer.then().statusCode(303);
        var cookie = answer.cookie("session");
        atTheDesk(other, cookie).then().statusCode(200);
        other.form().cookie("session", cookie).post("/desk/sign-out").then().statusCode(303);
        atTheDesk(one, cookie).then().statusCode(303);
    }

    private static Response atTheDesk(Site node, String session) {
        return node.browser().cookie("session", session).get("/desk");
    }

    @Test
    void aCodeThatOneHasSentIsGoodAtTheOtherOnce() {
        var asked = one.form()
                .formParam("email", "reader@trial.example")
                .formParam("next", "/me")
                .post("/sign-in");
        String letter = one.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select body from outbox where recipient = 'reader@trial.example'")
                .mapTo(String.class)
                .one());
        assertThat(letter).as("the address that both have").contains(ADDRESS + "/sign-in/");
        String code = Pattern.compile("\\b\\d{6}\\b")
                .matcher(letter)
                .results()
                .findFirst()
                .orElseThrow()
                .group();
        assertThat(typed(other, asked, code).statusCode()).isEqualTo(303);
        assertThat(typed(one, asked, code).statusCode()).as("used already").isEqualTo(422);
    }

    private static Response typed(Site node, Response asked, String code) {
        return node.form().cookies(asked.cookies()).formParam("code", code).post("/sign-in/code");
    }

    /** Ten tries for an account (asvs.md, 6.3.1), wherever they are made. */
    @Test
    void triesAreCountedTogether() {
        for (int i = 0; i < 5; i++) {
            signIn(one, "wrong for the " + i + "th time").then().statusCode(422);
            signIn(other, "wrong here for the " + i + "th time").then().statusCode(422);
        }
        assertThat(signIn(one, Site.PASSWORD).statusCode()).isEqualTo(429);
        assertThat(signIn(other, Site.PASSWORD).statusCode()).isEqualTo(429);
    }

    private static Response signIn(Site node, String password) {
        return node.form()
                .formParam("email", EMAIL)
                .formParam("password", password)
                .post("/desk/sign-in");
    }

    /** Also where a browser or a page cache of that server has the page as it was. */
    @Test
    void whatIsChosenAtOneIsShownAtTheOtherASecondLater() {
        var before = other.browser().get("/");
        before.then().body(not(containsString("Two Lanterns")));
        one.form()
                .cookie(desk)
                .formParam("siteName", "Two Lanterns")
                .formParam("language", "en")
                .formParam("defaultZone", "Europe/Vienna")
                .formParam("publicAddress", "")
                .post("/desk/settings")
                .then()
                .statusCode(303);
        one.browser().get("/").then().body(containsString("Two Lanterns"));
        pass(Duration.ofSeconds(1));
        other.browser()
                .header("If-None-Match", String.valueOf(before.header("ETag")))
                .get("/")
                .then()
                .statusCode(200)
                .body(containsString("Two Lanterns"));
    }

    @Test
    void whatIsSentToOneIsHadFromTheOtherAlsoInParts() {
        byte[] wav = Sent.wav();
        String track = sent(wav);
        var whole = other.browser().cookie(desk).get(track);
        assertThat(whole.statusCode()).isEqualTo(200);
        assertThat(Arrays.equals(whole.asByteArray(), wav)).isTrue();
        var part = other.browser()
                .cookie(desk)
                .header("Range", "bytes=70000-70099")
                .get(track);
        assertThat(part.statusCode()).isEqualTo(206);
        assertThat(part.header("Content-Range")).isEqualTo("bytes 70000-70099/" + wav.length);
        assertThat(part.asByteArray()).isEqualTo(Arrays.copyOfRange(wav, 70_000, 70_100));
    }

    /** Whoever wants a file is told to come back, nothing is lost, and nothing is made again. */
    @Test
    void whileTheObjectStoreIsAwayReadersAreToldToComeBackAndThenAllIsThere() {
        byte[] wav = Sent.wav();
        String track = sent(wav);
        ObjectServer.get().relay().cut();
        try {
            for (var node : List.of(one, other)) { // of which the first knows how long it is
                node.browser()
                        .cookie(desk)
                        .get(track)
                        .then()
                        .statusCode(503)
                        .header("Retry-After", equalTo("60"))
                        .header("Content-Type", containsString("text/html"))
                        .header("Accept-Ranges", nullValue())
                        .body(containsString("</html>"));
            }
            upload(episode("Sent in vain"), wav).then().statusCode(503).header("Retry-After", notNullValue());
            pass(Duration.ofSeconds(3));
            one.browser().get("/healthz").then().statusCode(503).body("files", equalTo("failing"));
            one.browser().cookie(desk).get("/desk").then().statusCode(200);
        } finally {
            ObjectServer.get().relay().mend();
        }
        pass(Duration.ofSeconds(3));
        one.browser().get("/healthz").then().statusCode(200).body("files", equalTo("ok"));
        assertThat(Arrays.equals(other.browser().cookie(desk).get(track).asByteArray(), wav))
                .isTrue();
        int broken = one.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select count(*) from broken_file")
                .mapTo(Integer.class)
                .one());
        assertThat(broken).isZero();
    }

    /** @return the path under which it is had */
    private static String sent(byte[] wav) {
        var episode = episode("Sent");
        upload(episode, wav).then().statusCode(303);
        String id = one.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select id from upload where episode_id = ?")
                .bind(0, episode.id().value())
                .mapTo(String.class)
                .one());
        return "/desk/episodes/" + episode.id() + "/tracks/" + id + "/recording";
    }

    private static Response upload(Episode episode, byte[] wav) {
        return one.form()
                .cookie(desk)
                .contentType("multipart/form-data")
                .multiPart("file", "Band.wav", wav, "audio/wav")
                .post("/desk/episodes/" + episode.id() + "/tracks");
    }

    private static synchronized Episode episode(String title) {
        var jdbi = one.groundbass().database().jdbi();
        var catalog = new SeriesCatalog(jdbi, new Audit(jdbi, one.clock()), one.clock());
        var series = catalog.open(one.educator(), Deed.WRITE).stream()
                .findFirst()
                .orElseGet(() -> Studio.done(
                        catalog.create(one.educator(), new SeriesForm("Low Tide", "", "Grooves.", "Europe/Vienna"))));
        return Studio.done(
                Parts.over(jdbi, one.clock()).desk().create(one.educator(), series.id(), title, Level.BEGINNER));
    }

    @Test
    void aServerThatIsSetUpOtherwiseOrHasItsFilesInAFolderIsRefused(@TempDir Path data) {
        var alike = ofTheSite(Config.local(data, 0));
        for (var wrong : List.of(
                alike.at(URI.create("http://other.example")),
                alike.with(new Config.MailServer(
                        "mail.example", 25, Optional.empty(), Optional.empty(), new EmailAddress("a@b.example"))),
                Config.local(data, 0).with(alike.database()))) {
            var failure =
                    catchThrowable(() -> Groundbass.start(wrong, one.clock()).close());
            assertThat(StartFailure.advice(failure, wrong).orElseThrow())
                    .contains("process " + ProcessHandle.current().pid() + " on ", "--");
        }
    }

    /** What it had begun is done by the others: see JobsTest. */
    @Test
    void whereOneEndsTheOtherGoesOn() {
        var cookie = signIn(one, Site.PASSWORD).cookie("session");
        try (var third = Site.open(SeveralNodesTest::ofTheSite)) {
            third.clock().set(one.clock().instant());
            atTheDesk(third, cookie).then().statusCode(200);
        }
        atTheDesk(other, cookie).then().statusCode(200);
    }
}
