package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;

import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadState;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Withdrawal;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.settings.SiteSettings;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.release.play.ExactStems;
import groundbass.web.Html;
import groundbass.web.Site;
import groundbass.web.shell.limit.Limit;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipInputStream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TakingTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);
    static final Statistics statistics =
            new Statistics(site.groundbass().database().jdbi());

    @AfterAll
    static void close() {
        site.close();
    }

    @Test
    void aFileIsTakenHomeUnderANameThatTellsItsLesson() {
        principal("A")
                .get(shelf.file(1, "sheet.pdf"))
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .header(
                        "Content-Disposition",
                        equalTo("attachment; filename=\"quay-exercises-01-first-plank-sheet.pdf\""))
                .header("Accept-Ranges", equalTo("bytes"))
                .header("ETag", startsWith("\""));
    }

    /** RFC 6266 section 4.2: "inline" is shown, under the same name where it is saved; what runs is never shown. */
    @Test
    void theSheetOpensInTheBrowserAsWellAndNothingElseDoes() {
        var page =
                Jsoup.parse(site.browser().get("/series/" + Shelf.SERIES + "/1").asString());
        String open = page.select("table.files a[href$=?open]").attr("href");
        assertThat(open).isEqualTo(shelf.file(1, "sheet.pdf") + "?open");
        principal("A")
                .get(open)
                .then()
                .statusCode(200)
                .header("Content-Disposition", equalTo("inline; filename=\"quay-exercises-01-first-plank-sheet.pdf\""));
        principal("A")
                .get(shelf.file(1, "line.txt") + "?open")
                .then()
                .header("Content-Disposition", startsWith("attachment"));
    }

    @Test
    void theRecordIsThereWithEveryByte() {
        var body = principal("B").get(shelf.file(1, "line.mid")).body().asByteArray();
        Shelf.await(() -> last("line.mid").state() == DownloadState.COMPLETE);
        var taken = last("line.mid");
        assertThat(taken.state()).isEqualTo(DownloadState.COMPLETE);
        assertThat(taken.bytesSent()).isEqualTo(body.length);
        assertThat(taken.student()).isEmpty();
    }

    @Test
    void whatAnEducatorTriesOutAtTheDeskIsRecordedAndNotCounted() {
        var id = shelf.episode(1).id();
        long counted = statistics.ofEpisode(id).downloads().all();
        int rows = rows("sheet.pdf");
        principal("Desk")
                .cookie(site.atTheDesk())
                .get(shelf.file(1, "sheet.pdf"))
                .then()
                .statusCode(200);
        assertThat(rows("sheet.pdf")).isEqualTo(rows + 1);
        assertThat(statistics.ofEpisode(id).downloads().all()).isEqualTo(counted);
        principal("Desk").get(shelf.file(1, "sheet.pdf")).then().statusCode(200);
        assertThat(statistics.ofEpisode(id).downloads().all()).isEqualTo(counted + 1);
    }

    private static int rows(String name) {
        return site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select count(*) from download where file_name = :name")
                .bind("name", name)
                .mapTo(Integer.class)
                .one());
    }

    /** RFC 9110 section 14: two halves, brought together by the cookie that came with the first. */
    @Test
    void theRangesOfOneDownloadAreOneRecord() {
        String path = shelf.file(2, "line.mid");
        int before = taken("line.mid", 2).size();
        var first = principal("C").header("Range", "bytes=0-99").get(path);
        assertThat(first.statusCode()).isEqualTo(206);
        assertThat(first.getDetailedCookie("take").getPath()).isEqualTo(path);
        assertThat(first.getDetailedCookie("take").isHttpOnly()).isTrue();
        site.clock().advance(Duration.ofHours(2)); // longer than ranges are joined without it
        principal("C")
                .cookie("take", first.cookie("take"))
                .header("Range", "bytes=100-")
                .get(path)
                .then()
                .statusCode(206);
        Shelf.await(() -> taken("line.mid", 2).get(before).state() == DownloadState.COMPLETE);
        var taken = taken("line.mid", 2);
        assertThat(taken).hasSize(before + 1);
        assertThat(taken.get(before).state()).isEqualTo(DownloadState.COMPLETE);
    }

    @Test
    void headAndWhatIsStillFreshAreNotCounted() {
        String path = shelf.file(1, "line.txt");
        var head = principal("D").head(path);
        assertThat(head.statusCode()).isEqualTo(200);
        principal("D")
                .header("If-None-Match", head.header("ETag"))
                .get(path)
                .then()
                .statusCode(304);
        principal("D").header("Range", "bytes=9999999-").get(path).then().statusCode(416);
        assertThat(taken("line.txt", 1)).isEmpty();
    }

    @Test
    void playingOnThePageIsNoDownload() {
        String name = "full-75.mp3";
        principal("E")
                .header("Range", "bytes=0-9")
                .get(shelf.file(1, name).replace("/files/", "/play/"))
                .then()
                .statusCode(206)
                .contentType("audio/mpeg")
                .header("Content-Disposition", org.hamcrest.Matchers.nullValue());
        assertThat(taken(name, 1)).isEmpty();
    }

    @Test
    void robotsAreCountedApart() {
        long before = statistics.ofEpisode(shelf.episode(2).id()).robots();
        principal("Examplebot/2.1 (+https://bot.example/)")
                .get(shelf.file(2, "README.txt"))
                .then()
                .statusCode(200);
        assertThat(statistics.ofEpisode(shelf.episode(2).id()).robots()).isEqualTo(before + 1);
        assertThat(taken("README.txt", 2)).isEmpty();
    }

    /** Reading and the player stay open; a whole recording is a file, wherever it is played. */
    @Test
    void whereDownloadsNeedASignInSoDoWholeRecordingsOnThePage() {
        var jdbi = site.groundbass().database().jdbi();
        var settings = new Settings(jdbi, new Audit(jdbi, site.clock()));
        var before = settings.current();
        jdbi.useTransaction(handle -> settings.save(handle, needingSignIn(before)));
        site.clock().advance(Duration.ofSeconds(2));
        try {
            int whole = 0;
            int open = 0;
            for (var file : shelf.releases.files().of(shelf.current(1).id())) {
                String path = "/play/" + shelf.current(1).id() + "/" + file.name();
                int status =
                        site.program().header("Range", "bytes=0-9").get(path).statusCode();
                if (file.role().isPlayed() && file.role().isOffered()) {
                    assertThat(status).as(path).isEqualTo(401);
                    whole++;
                } else if (file.role().isPlayed()) {
                    assertThat(status).as(path).isIn(200, 206);
                    open++;
                } else {
                    assertThat(status).as(path).isEqualTo(404);
                }
            }
            assertThat(whole).isPositive();
            assertThat(open).isPositive();
            recordedForAStudent(shelf.file(1, "full-100.mp3").replace("/files/", "/play/"));
        } finally {
            jdbi.useTransaction(handle -> settings.save(handle, before));
            site.clock().advance(Duration.ofSeconds(2));
        }
    }

    private static void recordedForAStudent(String path) {
        var email = EmailAddress.read("listens@reader.example").orElseThrow();
        var jdbi = site.groundbass().database().jdbi();
        jdbi.useHandle(handle -> handle.execute(
                "insert into student (id, email, locale, created_at) values ('listens000000001', ?, 'en', now())",
                email.value()));
        var student = new StudentId("listens000000001");
        principal("H")
                .cookie(site.signedIn(new Person.OfStudent(student)))
                .get(path)
                .then()
                .statusCode(200)
                .header("Cache-Control", startsWith("private"));
        Shelf.await(() -> !statistics.ofStudent(student).isEmpty());
        assertThat(statistics.ofStudent(student))
                .extracting(download -> download.file().name())
                .containsExactly("full-100.mp3");
    }

    private static SiteSettings needingSignIn(SiteSettings before) {
        return new SiteSettings(
                before.siteName(), before.language(), true, before.defaultZone(), before.publicAddress());
    }

    @ParameterizedTest
    @ValueSource(strings = {"page.json", "line-wide.svg", "none.pdf", "..%2fgroundbass.mv.db", "%2e%2e"})
    void whatIsNotOfferedIsNotThere(String name) {
        var answer = raw("/files/" + shelf.current(1).id() + "/" + name);
        if (answer.statusCode() == 301) { // another spelling of an address is sent to the usual one
            answer = raw(answer.header("Location"));
        }
        assertThat(answer.statusCode()).isIn(400, 404);
    }

    private Response raw(String address) {
        return principal("F").urlEncodingEnabled(false).get(address);
    }

    /** It costs seconds of the machine: for who only asks about it, plays, or may not have it, nothing is made. */
    @Test
    void aTrackThatNobodyAskedForIsMadeForWhoMayHaveItAlone() {
        String name = "bass-45.mp3";
        String path = "/files/" + shelf.current(1).id() + "/" + name;
        principal("T").head(path).then().statusCode(404);
        principal("T").get(path.replace("/files/", "/play/")).then().statusCode(404);
        needSignIn(true);
        try {
            var sent = site.browser().get(path);
            sent.then().statusCode(303).header("Location", startsWith("/sign-in?next="));
            assertThat(sent.header("Location")).contains("wanted%3D" + name);
        } finally {
            needSignIn(false);
        }
        assertThat(files(name)).as("made by now").isZero();
        byte[] first = principal("T")
                .get(path)
                .then()
                .statusCode(200)
                .contentType("audio/mpeg")
                .extract()
                .asByteArray();
        assertThat(files(name)).isOne();
        assertThat(principal("T").get(path).asByteArray()).isEqualTo(first);
        Shelf.await(() -> taken(name, 1).size() == 1);
        site.groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute("delete from release_file where name = ?", name));
        principal("T").head(path).then().statusCode(404);
        assertThat(principal("T").get(path).asByteArray())
                .as("made again after it had to go")
                .isEqualTo(first);
    }

    /** Nor is a line without loss, which costs as much: not for what was taken back either (RFC 9110 section 15.5.11). */
    @Test
    void aLineWithoutLossIsMadeForWhoPlaysItAlone() {
        var release = shelf.current(1);
        String path = "/play/" + release.id() + "/" + ExactStems.manifest("line", 100);
        var jdbi = site.groundbass().database().jdbi();
        var withdrawal = new Withdrawal(site.clock().instant(), "");
        principal("X").get(path.replace("/play/", "/files/")).then().statusCode(404);
        principal("X").head(path).then().statusCode(404);
        jdbi.useTransaction(handle -> shelf.episodes.takeBack(handle, release.episode(), withdrawal));
        site.clock().advance(Duration.ofSeconds(2));
        try {
            principal("X").get(path).then().statusCode(410);
        } finally {
            jdbi.useTransaction(handle -> shelf.episodes.putBack(handle, release.episode()));
            site.clock().advance(Duration.ofSeconds(2));
        }
        assertThat(site.data().resolve("passing")).as("made by now").doesNotExist();
        var stem = principal("X").get(path).then().statusCode(200).extract().<String>path("tempos[0].files.bass.url");
        principal("X").head(path).then().statusCode(200);
        principal("X")
                .header("Range", "bytes=0-3")
                .get(path.replaceFirst("[^/]+$", stem))
                .then()
                .statusCode(206)
                .contentType("audio/flac");
        assertThat(site.data().resolve("passing")).isDirectoryContaining(Files::isDirectory);
        assertThat(site.data().resolve("passing").toFile().list()).hasSize(1);
    }

    private static int files(String name) {
        return site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select count(*) from release_file where name = :name")
                .bind("name", name)
                .mapTo(Integer.class)
                .one());
    }

    @ParameterizedTest
    @CsvSource({"45, bass-45", "44.6, bass-45", "'44,6', bass-45", "7, bass-40", "100000, bass-130"})
    void theFormLeadsToTheNearestTempoThatIsMade(String typed, String name) {
        String lesson = "/files/" + shelf.current(1).id();
        assertThat(form(lesson, typed).header("Location")).isEqualTo(lesson + "/" + name + ".mp3");
    }

    @Test
    void whatIsNoTempoLeadsNowhere() {
        assertThat(form("/files/" + shelf.current(1).id(), "fast").statusCode()).isEqualTo(404);
    }

    private static Response form(String lesson, String percent) {
        return principal("T")
                .queryParam("what", "bass")
                .queryParam("line", "line")
                .queryParam("percent", percent)
                .queryParam("as", "mp3")
                .get(lesson);
    }

    /** A folder for each lesson with the bytes that its files have alone, and a download of each lesson's bundle. */
    @Test
    void aWholeSeriesIsOneZipAndADownloadOfEachLesson() throws IOException {
        String path = "/files/series/" + Shelf.SERIES + "/all.zip";
        var page = Jsoup.parse(site.browser().get("/series/" + Shelf.SERIES).asString());
        assertThat(page.select("a[href=" + path + "]").attr("rel")).isEqualTo("nofollow");
        var cookie = student("all@reader.example");
        as(cookie).head(path).then().statusCode(200).contentType("application/zip");
        assertThat(bundlesTaken("all@reader.example")).isEmpty();

        var files = unpacked(as(cookie).get(path).asByteArray());
        assertThat(files.keySet()).allMatch(name -> name.startsWith(Shelf.SERIES + "/" + Shelf.SERIES + "-0"));
        for (int number : List.of(1, 2)) {
            var spec = shelf.current(number).spec();
            String name = Shelf.SERIES + "/" + spec.fileStem() + "/" + spec.fileStem() + "-sheet.pdf";
            assertThat(files.get(name))
                    .as(name)
                    .isEqualTo(as(cookie).get(shelf.file(number, "sheet.pdf")).asByteArray());
        }
        Shelf.await(() -> bundlesTaken("all@reader.example").equals(List.of("complete", "complete")));
        assertThat(bundlesTaken("all@reader.example")).containsExactly("complete", "complete");

        for (int i = 2; i < Limit.SERIES.times; i++) {
            as(cookie).head(path).then().statusCode(200);
        }
        as(cookie).head(path).then().statusCode(429);
        site.program().get("/files/series/empty/all.zip").then().statusCode(404);
        needSignIn(true);
        try {
            site.program().get(path).then().statusCode(401);
            site.browser()
                    .get(path)
                    .then()
                    .statusCode(303)
                    .header("Location", containsString("/sign-in?next=%2Fseries%2F" + Shelf.SERIES));
        } finally {
            needSignIn(false);
        }
    }

    /** A file of the second lesson is gone when its turn comes: what was taken must not look like the whole series. */
    @Test
    void aSeriesThatBreaksOffIsSeenToBeBroken() throws IOException {
        var folder = site.data().resolve("series-broken");
        var gone = stored(2, "sheet.pdf");
        Files.move(gone, folder);
        try (var socket = new Socket("127.0.0.1", URI.create(site.address()).getPort())) {
            String request = "GET /files/series/" + Shelf.SERIES + "/all.zip HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            String all = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
            assertThat(all).startsWith("HTTP/1.1 200 ").contains("Transfer-Encoding: chunked");
            assertThat(all).doesNotEndWith("0\r\n\r\n");
        } finally {
            Files.move(folder, gone);
        }
    }

    private static Path stored(int number, String name) throws IOException {
        var file = shelf.releases.files().of(shelf.current(number).id()).stream()
                .filter(one -> one.name().endsWith(name))
                .findFirst()
                .orElseThrow();
        try (var all = Files.walk(site.data())) {
            return all.filter(path -> path.endsWith(file.sha256().hex()))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Map<String, byte[]> unpacked(byte[] zip) throws IOException {
        var files = new HashMap<String, byte[]>();
        var in = new ZipInputStream(new ByteArrayInputStream(zip));
        for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
            files.put(entry.getName(), in.readAllBytes());
        }
        return files;
    }

    private static List<String> bundlesTaken(String email) {
        return site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery("""
                        select d.state from download d join student s on s.id = d.student_id
                        where s.email = :email and d.file_name like '%.zip'""")
                .bind("email", email)
                .mapTo(String.class)
                .list());
    }

    @Test
    void onlyRecordingsCanBePlayed() {
        principal("G")
                .get(shelf.file(1, "sheet.pdf").replace("/files/", "/play/"))
                .then()
                .statusCode(404);
    }

    @Test
    void aReleaseThatIsNotOutGivesNothingAndAnOlderOneStays() {
        String old = shelf.file(2, "sheet.pdf");
        var prepared = shelf.release(2, "Not out.", false);
        principal("H").get("/files/" + prepared + "/sheet.pdf").then().statusCode(404);
        shelf.release(2, "Out.", true);
        assertThat(shelf.file(2, "sheet.pdf")).isNotEqualTo(old);
        principal("H").get(old).then().statusCode(200);
    }

    @Test
    void whoHoldsAnOlderSheetLearnsWhatChangedAndNobodyElseDoes() {
        var cookie = student("older@reader.example");
        as(cookie).get(shelf.file(2, "sheet.pdf")).then().statusCode(200);
        shelf.release(2, "Newer still.", true);
        site.clock().advance(Duration.ofSeconds(2));
        String lesson = "/series/" + Shelf.SERIES + "/2";
        var page = Jsoup.parse(as(cookie).get(lesson).asString());
        assertThat(page.select("#older").text()).contains("You have an older sheet");
        assertThat(page.select("#older ~ ul li").eachText()).containsExactly("summary");
        assertThat(site.browser().get(lesson).asString()).doesNotContain("id=\"older\"");
        var row = Jsoup.parse(as(cookie).get("/me").asString())
                .select("table.taken tbody tr")
                .first();
        assertThat(row.text()).contains("Older: release");

        as(cookie).get(shelf.file(2, "sheet.pdf")).then().statusCode(200);
        assertThat(as(cookie).get(lesson).asString()).doesNotContain("id=\"older\"");
        assertThat(as(cookie).get("/me").asString()).doesNotContain("Older: release");
    }

    /** RFC 9110 section 15.5.11: what was taken back is gone, its files too, until it is put back. */
    @Test
    void whatIsTakenBackSaysSoAndGivesNoFiles() {
        var lesson = shelf.episode(1);
        String path = "/series/" + Shelf.SERIES + "/1";
        var withdrawal = new Withdrawal(site.clock().instant(), "Its owner <asked> for it.");
        var jdbi = site.groundbass().database().jdbi();
        String feed = "/series/" + Shelf.SERIES + "/feed.atom";
        var lists = List.of("/", "/series/" + Shelf.SERIES, "/sitemap.xml");
        for (String list : lists) {
            assertThat(site.browser().get(list).asString()).as(list).containsAnyOf(path + "\"", path + "<");
        }
        assertThat(site.program().get(feed).asString()).contains("/e/" + lesson.id());
        jdbi.useTransaction(handle -> shelf.episodes.takeBack(handle, lesson.id(), withdrawal));
        site.clock().advance(Duration.ofSeconds(2));
        try {
            var gone = site.browser().get(path);
            assertThat(gone.statusCode()).isEqualTo(410);
            assertThat(Html.mistakes(gone.asString())).isEmpty();
            assertThat(Jsoup.parse(gone.asString()).text()).contains("taken back", "Its owner <asked> for it.");
            site.browser().get(shelf.file(1, "sheet.pdf")).then().statusCode(410);
            site.browser()
                    .get(shelf.file(1, "full-100.mp3").replace("/files/", "/play/"))
                    .then()
                    .statusCode(410);
            site.browser().get("/e/" + lesson.id()).then().statusCode(302);
            for (String list : lists) {
                assertThat(site.browser().get(list).asString()).as(list).doesNotContain(path + "\"", path + "<");
            }
            assertThat(site.program().get(feed).asString()).doesNotContain("/e/" + lesson.id());
        } finally {
            jdbi.useTransaction(handle -> shelf.episodes.putBack(handle, lesson.id()));
            site.clock().advance(Duration.ofSeconds(2));
        }
        site.browser().get(path).then().statusCode(200);
        site.browser().get(shelf.file(1, "sheet.pdf")).then().statusCode(200);
    }

    @Test
    void whereSignInIsNeededPeopleAreSentThereAndProgramsAreTold() {
        String path = shelf.file(1, "sheet.pdf");
        needSignIn(true);
        try {
            site.browser()
                    .get(path)
                    .then()
                    .statusCode(303)
                    .header(
                            "Location",
                            containsString(
                                    "/sign-in?next=%2Fe%2F" + shelf.episode(1).id()));
            site.program().get(path).then().statusCode(401).contentType("application/problem+json");
            site.browser().get("/series/" + Shelf.SERIES + "/1").then().body(containsString("sign in once"));
            site.program().cookie(site.atTheDesk()).get(path).then().statusCode(200);
        } finally {
            needSignIn(false);
        }
    }

    private static void needSignIn(boolean needed) {
        var jdbi = site.groundbass().database().jdbi();
        var usual = SiteSettings.USUAL;
        var changed =
                new SiteSettings(usual.siteName(), usual.language(), needed, usual.defaultZone(), Optional.empty());
        jdbi.useTransaction(handle -> new Settings(jdbi, new Audit(jdbi, site.clock())).save(handle, changed));
        site.clock().advance(Duration.ofSeconds(2));
    }

    /** Somebody else than in every other test. */
    private static RequestSpecification as(Cookie cookie) {
        return site.browser().cookie(cookie);
    }

    private static Cookie student(String email) {
        var jdbi = site.groundbass().database().jdbi();
        var students = new Students(jdbi, new Outbox(jdbi, site.clock()), new Audit(jdbi, site.clock()), site.clock());
        var student = jdbi.inTransaction(handle -> students.create(handle, new EmailAddress(email), Locale.ENGLISH));
        return site.signedIn(new Person.OfStudent(student.id()));
    }

    private static RequestSpecification principal(String name) {
        return site.program().header("User-Agent", "Reader " + name);
    }

    private static Download last(String name) {
        var all = taken(name, 1);
        return all.get(all.size() - 1);
    }

    private static List<Download> taken(String name, int episode) {
        var taken = new ArrayList<Download>();
        statistics.taken(shelf.episode(episode).id(), one -> taken.add(one.download()));
        taken.removeIf(download -> !download.file().name().equals(name));
        return taken;
    }
}
