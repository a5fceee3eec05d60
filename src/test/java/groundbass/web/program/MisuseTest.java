package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesPart;
import groundbass.web.desk.Sent;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What programs send by mistake, or to do harm, and what a fault leaves behind. Every answer is held against the description. */
class MisuseTest {
    private static final String JSON = "application/json";
    private static final String UNKNOWN_DIGEST = "a".repeat(64);
    /** Nothing keeps it from going out but a stretch that is for few hands, which may be let stand. */
    private static final String UNWISE = """
            {"line":"bar 1\\n1 E5+A9\\n2-4 rest\\n","tempos":"100","rounds":"1",
             "rights":{"statement":"Own work.","clearance":"own"}}""";

    private static final Studio studio = new Studio();
    private static final LetIn programs = new LetIn(studio, new Description());
    private static final String token = programs.token(studio.site.educator(), "Week", ProgramScope.values());

    @AfterAll
    static void close() {
        studio.close();
    }

    private static String lesson() {
        return studio.episode("Kept").id().value();
    }

    private static Response patch(String lesson, String patch) {
        return programs.request(token)
                .contentType("application/merge-patch+json")
                .header("If-Match", "*")
                .body(patch)
                .patch("/lessons/" + lesson + "/draft");
    }

    private static Response put(String path, String type, String body) {
        return programs.request(token)
                .contentType(type)
                .header("If-Match", "*")
                .body(body)
                .put(path);
    }

    private static Response promise(String lesson, String body) {
        return programs.request(token)
                .contentType(JSON)
                .header("If-None-Match", "*")
                .body(body)
                .put("/lessons/" + lesson + "/promise");
    }

    private static Response get(String path) {
        return programs.request(token).get(path);
    }

    private static void execute(String statement) {
        studio.site.groundbass().database().jdbi().useHandle(handle -> handle.execute(statement));
    }

    private static long accepted() {
        return studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select count(*) from accepted_remark")
                .mapTo(Long.class)
                .one());
    }

    /** The recording came, and then its draft could not be saved. */
    @Test
    void aRecordingIsNotTakenAgainWhereAFaultCameAfterIt() {
        String lesson = lesson();
        String path = "/lessons/" + lesson + "/recordings";
        var sent = programs.request(token)
                .contentType("audio/wav")
                .header("Idempotency-Key", LetIn.key())
                .body(Sent.wav());
        execute("alter table draft add constraint shut check (episode_id <> '" + lesson + "') nocheck");
        sent.post(path).then().statusCode(500);
        execute("alter table draft drop constraint shut");
        sent.post(path).then().statusCode(409);
        get(path).then().body("items.size()", equalTo(1));
    }

    @Test
    void whoReadsTheFiguresAloneFindsWhatWentOutAndNoDraft() {
        var jdbi = studio.site.groundbass().database().jdbi();
        var colleagues = new Colleagues(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock());
        var who = programs.stranger();
        var out = studio.episode("Went out").id();
        String draft = lesson();
        jdbi.useTransaction(handle -> {
            new Episodes(jdbi).markPublished(handle, out, studio.site.clock().instant());
            colleagues.enter(handle, who, studio.series.id(), SeriesPart.READER_OF_FIGURES);
        });
        String theirs = programs.token(who, "Figures", ProgramScope.READ, ProgramScope.STATISTICS);
        String series = "/series/" + studio.series.id();
        programs.request(theirs)
                .get("/series")
                .then()
                .body("items.id", hasItem(studio.series.id().value()))
                .body("items.find { it.id == '" + studio.series.id() + "' }.part", equalTo("figures"));
        programs.request(theirs)
                .get(series + "/lessons")
                .then()
                .body("items.id", hasItem(out.value()))
                .body("items.id", not(hasItem(draft)));
        programs.request(theirs).get(series + "/lessons").then().body("items.publishedAt", not(hasItem(nullValue())));
        programs.request(theirs).get("/lessons/" + out + "/statistics").then().statusCode(200);
        programs.request(theirs).get("/lessons/" + out).then().statusCode(404);
        jdbi.useTransaction(handle -> colleagues.end(handle, studio.site.educator(), who, studio.series.id()));
        programs.request(theirs).get(series + "/lessons").then().statusCode(404);
    }

    /** An answer is kept for a day, and given again only to somebody who writes here still. */
    @Test
    void whatIsSharedNoMoreIsNotAnsweredAgain() {
        var jdbi = studio.site.groundbass().database().jdbi();
        var colleagues = new Colleagues(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock());
        var who = programs.stranger();
        jdbi.useTransaction(handle -> colleagues.enter(handle, who, studio.series.id(), SeriesPart.EDITOR));
        var begin = programs.request(programs.token(who, "Shared", ProgramScope.WRITE))
                .contentType(JSON)
                .header("Idempotency-Key", LetIn.key())
                .body("{\"title\":\"Begun as a colleague\"}");
        String path = "/series/" + studio.series.id() + "/lessons";
        begin.post(path).then().statusCode(201);
        begin.post(path).then().statusCode(201);
        jdbi.useTransaction(handle -> colleagues.end(handle, studio.site.educator(), who, studio.series.id()));
        begin.post(path).then().statusCode(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"exercises", "courses"})
    void aNullInAListIsRefusedByItsPlace(String member) {
        patch(lesson(), "{\"" + member + "\":[null]}")
                .then()
                .statusCode(422)
                .body("problems.member[0]", containsString(member));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[null]", "[\"abc\"]", "\"abc\""})
    void whatIsNoDigestIsNotAccepted(String accept) {
        promise(lesson(), "{\"hour\":\"2026-02-06T18:00\",\"accept\":" + accept + "}")
                .then()
                .statusCode(422)
                .body("problems.member[0]", containsString("accept"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"true\"", "1", "\"\""})
    void whatIsNoTruthIsNotTakenForOne(String sent) {
        programs.post(token)
                .body("{\"note\":\"Bar 1.\",\"byLetter\":" + sent + "}")
                .post("/lessons/" + lesson() + "/releases")
                .then()
                .statusCode(422)
                .body("problems.member", equalTo(List.of("byLetter")));
    }

    /** What is refused has changed nothing: no remark stands by it, and none that nobody made. */
    @Test
    void whatIsRefusedLetsNothingStand() {
        String lesson = lesson();
        patch(lesson, UNWISE).then().statusCode(200);
        List<String> asking = get("/lessons/" + lesson + "/preflight")
                .jsonPath()
                .getList("items.remarks.flatten().findAll { it.weight == 'asks' }.digest");
        assertThat(asking).isNotEmpty();
        long before = accepted();
        String accept = "\"accept\":[\"" + UNKNOWN_DIGEST + "\",\"" + String.join("\",\"", asking) + "\"]";

        patch(lesson, "{\"rights\":{\"clearance\":\"waiting\"}}").then().statusCode(200);
        promise(lesson, "{\"hour\":\"2026-02-06T18:00\"," + accept + "}").then().statusCode(422);
        programs.post(token)
                .body("{" + accept + "}")
                .post("/lessons/" + lesson + "/releases")
                .then()
                .statusCode(422);
        assertThat(accepted()).isEqualTo(before);

        patch(lesson, "{\"rights\":{\"clearance\":\"own\"}}").then().statusCode(200);
        promise(lesson, "{\"hour\":\"2026-02-06T18:00\"}").then().statusCode(422);
        promise(lesson, "{\"hour\":\"2026-02-06T18:00\"," + accept + "}").then().statusCode(201);
        assertThat(accepted()).isEqualTo(before + asking.size());
    }

    @ParameterizedTest
    @CsvSource({
        "mainLine,line",
        "exercises[1],exercises[1].line",
        "groove,drums.grid",
        "facts.gear,gear",
        "facts.video,video",
        "facts.courses,courses",
        "settings.language,language",
        "settings.tempos,tempos",
        "settings.rounds,rounds",
        "rights.clearance,rights.clearance",
        "rights,rights",
        "title,title",
        "summary,summary",
        "notes,notes",
        "local,hour",
        "zone,zone",
        "note,note",
        "why,why"
    })
    void aFieldIsCalledByItsNameHere(String field, String member) {
        assertThat(MemberNames.of(field)).contains(member);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "walkthrough",
                "address",
                "imprint",
                "mail",
                "release",
                "tracks",
                "calendar",
                "file",
                "facts.chapters"
            })
    void whatTheInterfaceDoesNotHaveHasNoNameHere(String field) {
        assertThat(MemberNames.of(field)).isEmpty();
    }

    @Test
    void whatIsInTheWayIsToldByMembersThatThereAre() {
        String lesson = lesson();
        patch(
                        lesson,
                        "{\"line\":\"bar\",\"exercises\":[{\"name\":\"A\",\"line\":\"bar\"}],\"drums\":{\"grid\":\"x\"},\"tempos\":\"fast\",\"rounds\":\"many\",\"language\":\"?\",\"video\":\"here\",\"courses\":[{\"title\":\"\",\"address\":\"here\"}]}")
                .then()
                .statusCode(200);
        var told =
                get("/lessons/" + lesson + "/preflight").jsonPath().<String>getList("items.remarks.flatten().member");
        assertThat(told)
                .contains(
                        "line",
                        "exercises[0].line",
                        "drums.grid",
                        "tempos",
                        "rounds",
                        "language",
                        "video",
                        "courses",
                        "rights.clearance");
        programs.post(token)
                .body("{}")
                .post("/lessons/" + lesson + "/releases")
                .then()
                .statusCode(422)
                .body("problems.member", hasItem("drums.grid"));
    }

    /** 100 MB are announced, and not one of them is sent: what is wrong is told before they come. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                              | audio/wav  | kind=full | 400",
                "Idempotency-Key: no string      | audio/wav  | kind=full | 400",
                "Idempotency-Key: \"early\"      | audio/wav  | kind=loud | 400",
                "Idempotency-Key: \"early\"      | text/plain | kind=full | 415"
            })
    void whatIsWrongIsToldBeforeTheBodyComes(String header, String type, String query, int status) throws IOException {
        String path = "/api/v1/lessons/" + lesson() + "/recordings?" + query;
        assertThat(unsent(path, header, type, 99_999_999)).startsWith("HTTP/1.1 " + status);
    }

    @Test
    void aKeyIsAskedForBeforeAnObjectComes() throws IOException {
        String path = "/api/v1/series/" + studio.series.id() + "/lessons";
        assertThat(unsent(path, "", JSON, 1_000_000)).startsWith("HTTP/1.1 400");
    }

    /** The first line of the answer to a request whose body does not come. */
    private static String unsent(String path, String header, String type, long length) throws IOException {
        var site = URI.create(studio.site.address());
        try (var socket = new Socket(site.getHost(), site.getPort())) {
            socket.setSoTimeout(5_000);
            String head = "POST " + path + " HTTP/1.1\r\nHost: " + site.getAuthority() + "\r\nAuthorization: Bearer "
                    + token + "\r\n" + (header.isEmpty() ? "" : header + "\r\n") + "Content-Type: " + type
                    + "\r\nContent-Length: " + length + "\r\n\r\n";
            socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII);
        }
    }

    /** What is none counts as none of the 60 of an hour. */
    @Test
    void whatIsNoRecordingAtFirstSightIsNotCounted() {
        var who = programs.stranger();
        String theirs = programs.token(who, "Theirs", ProgramScope.values());
        String path = "/lessons/" + studio.strangersEpisode.id() + "/recordings";
        for (int i = 0; i < 60; i++) {
            programs.request(theirs)
                    .contentType("text/plain")
                    .header("Idempotency-Key", LetIn.key())
                    .body("no recording")
                    .post(path)
                    .then()
                    .statusCode(415);
        }
        programs.request(theirs)
                .contentType("audio/wav")
                .header("Idempotency-Key", LetIn.key())
                .body(Sent.wav())
                .post(path)
                .then()
                .statusCode(201);
    }

    /** As many as may go out. */
    @Test
    void aDraftHasNoMorePartsThanALessonMay() {
        String lesson = lesson();
        String exercise = "{\"name\":\"\",\"line\":\"\"}";
        patch(lesson, "{\"exercises\":[" + String.join(",", Collections.nCopies(30, exercise)) + "]}")
                .then()
                .statusCode(200);
        patch(lesson, "{\"exercises\":[" + String.join(",", Collections.nCopies(31, exercise)) + "]}")
                .then()
                .statusCode(422)
                .body("problems.member", equalTo(List.of("exercises")));
        patch(lesson, "{\"courses\":[" + String.join(",", Collections.nCopies(11, "{}")) + "]}")
                .then()
                .statusCode(422)
                .body("problems.member", equalTo(List.of("courses")));
        patch(lesson, "{\"exercises\":[" + String.join(",", Collections.nCopies(600_000, "{}")) + "]}")
                .then()
                .statusCode(400);
        get("/lessons/" + lesson + "/draft").then().body("exercises.size()", equalTo(30));
    }

    /** Each of them is short enough. */
    @Test
    void aDraftDoesNotGrowBitByBit() {
        String draft = "/lessons/" + lesson() + "/draft";
        put(draft + "/line", "text/plain", "x".repeat(1_500_000)).then().statusCode(204);
        put(draft + "/notes", "text/markdown", "x".repeat(1_500_000)).then().statusCode(422);
        patch(draft.split("/")[2], "{\"notes\":\"" + "x".repeat(1_500_000) + "\"}")
                .then()
                .statusCode(422);
        assertThat(get(draft + "/notes").asString()).isEmpty();
        get(draft).then().statusCode(200);
    }

    /** RFC 8259 section 8.2: half of a surrogate pair is no character. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"gear\":\"\\ud800\"}",
                "{\"courses\":[{\"title\":\"\\udc00x\"}]}",
                "{\"\\ud800\":\"x\"}",
                "{\"a\\u0000\":\"x\"}"
            })
    void whatIsNoTextIsRefused(String patch) {
        patch(lesson(), patch).then().statusCode(400).contentType("application/problem+json");
    }

    @Test
    void aWholePairIsText() {
        patch(lesson(), "{\"gear\":\"\\ud834\\udd22\"}").then().statusCode(200).body("gear", equalTo("\ud834\udd22"));
    }
}
