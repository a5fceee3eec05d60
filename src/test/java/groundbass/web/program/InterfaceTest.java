package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import groundbass.PictureBytes;
import groundbass.audience.student.Tries;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.EpisodeId;
import groundbass.web.desk.Sent;
import groundbass.web.desk.Studio;
import groundbass.web.shell.limit.Limit;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The week of a lesson by HTTP. Every answer is held against the description. */
class InterfaceTest {
    private static final String MERGE_PATCH = "application/merge-patch+json";
    private static final String LINE = "bar 1 over Am7\n1 2 3 4  A5, A5, E5, A5\n";
    /** Nothing keeps a lesson that says this from going out, and its sound is soon made. */
    private static final String PUBLISHABLE = """
            {"line":"bar 1\\n1 2 3 4  A5, A5, A5, A5\\n","tempos":"100","rounds":"1",
             "rights":{"statement":"Own work.","clearance":"own"}}""";

    private static final Description description = new Description();
    private static final Studio studio = new Studio();
    private static final LetIn programs = new LetIn(studio, description);
    private static final String token = programs.token(studio.site.educator(), "Week", ProgramScope.values());

    @AfterAll
    static void everyOperationWasSeenToSucceed() {
        studio.close();
        var succeeded = description.seen.stream()
                .filter(seen -> seen.matches(".* 2\\d\\d"))
                .map(seen -> seen.substring(0, seen.length() - 4))
                .collect(Collectors.toSet());
        assertThat(succeeded)
                .containsAll(description.operations().stream()
                        .map(Description.Operation::toString)
                        .toList());
    }

    private static String begin(String title) {
        return programs.post(token)
                .body("{\"title\":\"" + title + "\"}")
                .post("/series/" + studio.series.id() + "/lessons")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static String publishable(String title) {
        String lesson = begin(title);
        patch(lesson, PUBLISHABLE, "*").then().statusCode(200);
        return lesson;
    }

    private static Response get(String path) {
        return programs.request(token).get(path);
    }

    private static Response patch(String lesson, String patch, String seen) {
        return programs.request(token)
                .contentType(MERGE_PATCH)
                .header("If-Match", seen)
                .body(patch)
                .patch("/lessons/" + lesson + "/draft");
    }

    private static Response put(String path, String type, String body, String header, String value) {
        return programs.request(token)
                .contentType(type)
                .header(header, value)
                .body(body)
                .put(path);
    }

    @Test
    void aProgramLearnsWhatItMayAndWhereItIsDescribed() {
        get("").then()
                .statusCode(200)
                .body("program", equalTo("Week"))
                .body("educator", equalTo("Trial Studio"))
                .body("scopes", equalTo(List.of("read", "write", "publish", "statistics")))
                .header("Link", equalTo("</api/v1/openapi.json>; rel=\"service-desc\"")); // RFC 8631
        programs.bare()
                .get("/openapi.json")
                .then()
                .statusCode(200)
                .contentType(startsWith("application/json"))
                .body("openapi", equalTo("3.1.0"));
    }

    @Test
    void aLessonIsBegunWrittenAndFoundAgain() {
        String lesson = begin("Ladder");
        get("/lessons/" + lesson)
                .then()
                .body("title", equalTo("Ladder"))
                .body("state", equalTo("draft"))
                .body("promise", nullValue());
        get("/series/" + studio.series.id() + "/lessons?limit=200").then().body("items.id", hasItem(lesson));
        get("/series")
                .then()
                .body("items.id", equalTo(List.of(studio.series.id().value())));
        get("/series/" + studio.series.id()).then().body("zone", equalTo("Europe/Vienna"));

        String draft = "/lessons/" + lesson + "/draft";
        var before = get(draft + "/line");
        assertThat(before.asString()).isEmpty();
        var replaced = put(draft + "/line", "text/plain; charset=utf-8", LINE, "If-Match", before.header("ETag"));
        replaced.then().statusCode(204);
        var after = get(draft + "/line");
        assertThat(after.asString()).isEqualTo(LINE);
        assertThat(after.header("ETag")).isEqualTo(replaced.header("ETag"));
        put(draft + "/notes", "text/markdown", "*Slowly.*", "If-Match", "*")
                .then()
                .statusCode(204);
        assertThat(get(draft + "/notes").asString()).isEqualTo("*Slowly.*");

        var document = studio.document(studio.episode(new EpisodeId(lesson)));
        assertThat(document.mainLine().text()).isEqualTo(LINE);
        assertThat(document.notes()).isEqualTo("*Slowly.*");
    }

    /** RFC 7396 section 1: what is not named stays, what is null goes. */
    @Test
    void aPartOfADraftIsChanged() {
        String lesson = begin("Rung");
        var first = patch(lesson, "{\"gear\":\"a capo\",\"rights\":{\"composer\":\"A. Nobody\"}}", "*");
        first.then().statusCode(200).body("gear", equalTo("a capo")).body("rights.clearance", equalTo("open"));
        patch(lesson, "{\"gear\":null,\"rights\":{\"clearance\":\"own\"}}", first.header("ETag"))
                .then()
                .statusCode(200)
                .body("gear", equalTo(""))
                .body("title", equalTo("Rung"))
                .body("rights.composer", equalTo("A. Nobody"))
                .body("rights.clearance", equalTo("own"));
    }

    /** RFC 9110 sections 13.1.1 and 13.1.2, RFC 6585 section 3: no change of what was not seen. */
    @Test
    void noChangeIsLostUnseen() {
        String lesson = begin("Seen");
        String line = "/lessons/" + lesson + "/draft/line";
        String seen = get(line).header("ETag");
        put(line, "text/plain", LINE, "If-Match", seen).then().statusCode(204);
        put(line, "text/plain", "bar 1\n", "If-Match", seen)
                .then()
                .statusCode(412)
                .contentType("application/problem+json");
        put(line, "text/plain", "bar 1\n", "If-Match", "W/" + get(line).header("ETag"))
                .then()
                .statusCode(412); // section 13.1.1: compared strongly
        put(line, "text/plain", "bar 1\n", "If-None-Match", "*").then().statusCode(412);
        programs.request(token)
                .contentType("text/plain")
                .body("bar 1\n")
                .put(line)
                .then()
                .statusCode(428);
        patch(lesson, "{\"gear\":\"none\"}", "\"something\"").then().statusCode(412);
        assertThat(get(line).asString()).isEqualTo(LINE);
        // section 13.1.2: what the program has is not sent again
        for (String path : List.of("/series", "/lessons/" + lesson, line)) {
            programs.request(token)
                    .header("If-None-Match", get(path).header("ETag"))
                    .get(path)
                    .then()
                    .statusCode(304);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"title\":            | 400 | line 1",
                "[1]                    | 400 | object",
                "{\"a\":1,\"a\":2}      | 400 | line 1",
                "{\"title\":\"\\u0000\"}| 400 | U+0000",
                "{\"titel\":\"x\"}      | 422 | titel",
                "{\"title\":7}          | 422 | title",
                "{\"level\":\"expert\"} | 422 | level",
                "{\"courses\":[{\"titel\":\"x\"}]}       | 422 | courses[0].titel",
                "{\"rights\":{\"clearance\":\"maybe\"}}  | 422 | rights.clearance",
                "{\"drums\":{\"feel\":\"70\"}}           | 422 | drums.feel",
                "{\"instruments\":{\"bass\":\"loud\"}} | 422 | instruments.bass"
            })
    void whatCannotBeReadIsRefusedByItsPlaceAndNothingIsChanged(String patch, int status, String told) {
        String lesson = begin("Kept");
        patch(lesson, "{\"gear\":\"kept\"}", "*").then().statusCode(200);
        patch(lesson, patch.strip(), "*").then().statusCode(status).body(containsString(told));
        get("/lessons/" + lesson + "/draft")
                .then()
                .body("gear", equalTo("kept"))
                .body("title", equalTo("Kept"));
    }

    /** RFC 9110 sections 15.5.14 and 15.5.16; RFC 5789 section 3.1 names what is taken. */
    @Test
    void anotherMediaTypeAndTooLongABodyAreRefused() {
        String lesson = begin("Body");
        programs.request(token)
                .contentType("application/json")
                .header("If-Match", "*")
                .body("{}")
                .patch("/lessons/" + lesson + "/draft")
                .then()
                .statusCode(415)
                .header("Accept-Patch", equalTo(MERGE_PATCH));
        put("/lessons/" + lesson + "/draft/line", "text/plain; charset=iso-8859-1", "x", "If-Match", "*")
                .then()
                .statusCode(415);
        put("/lessons/" + lesson + "/draft/line", "text/plain", "x".repeat(2_000_001), "If-Match", "*")
                .then()
                .statusCode(413);
        programs.request(token)
                .header("If-Match", "*")
                .header("Content-Type", "text/plain")
                .body(new byte[] {(byte) 0xc3, 0x28}) // no UTF-8: RFC 3629 section 3
                .put("/lessons/" + lesson + "/draft/line")
                .then()
                .statusCode(400);
        assertThat(get("/lessons/" + lesson + "/draft/line").asString()).isEmpty();
    }

    @Test
    void anotherMethodIsRefusedAndTheAllowedOnesAreNamed() {
        programs.request(token)
                .delete("/series")
                .then()
                .statusCode(405)
                .header("Allow", containsString("GET")); // RFC 9110 section 15.5.6
        programs.request(token).get("/nothing").then().statusCode(404);
    }

    @Test
    void aListIsReadInParts() {
        begin("One more");
        begin("And one more");
        var first = get("/series/" + studio.series.id() + "/lessons?limit=1");
        first.then().statusCode(200).body("items.size()", equalTo(1));
        String next = first.header("Link").replaceFirst("<(.*)>; rel=\"next\"", "$1"); // RFC 8288 section 3
        studio.site
                .program()
                .header("Authorization", "Bearer " + token)
                .get(next)
                .then()
                .statusCode(200)
                .body("items.number", equalTo(List.of(first.jsonPath().getInt("items[0].number") + 1)));
        get("/series?limit=0").then().statusCode(400).body("detail", containsString("limit"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"line", "rights.clearance", "rights.statement"})
    void whatIsInTheWayIsToldAsTheDeskTellsIt(String member) {
        String lesson = begin("Unready");
        var preflight = get("/lessons/" + lesson + "/preflight");
        preflight.then().statusCode(200).body("clear", equalTo(false));
        List<String> holding = preflight.jsonPath().getList("items.remarks.flatten().findAll { it.holds }.member");
        assertThat(holding).contains(member);
        programs.post(token)
                .body("{}")
                .post("/lessons/" + lesson + "/releases")
                .then()
                .statusCode(422)
                .body("problems.member", hasItem(member));
    }

    @Test
    void anHourIsPromisedMovedAndTakenBack() {
        String lesson = publishable("Hour");
        String promise = "/lessons/" + lesson + "/promise";
        get(promise).then().statusCode(404);
        String json = "application/json";
        put(promise, json, "{\"hour\":\"2026-02-06T18:00\"}", "If-Match", "*")
                .then()
                .statusCode(412); // section 13.1.1: nothing is there
        put(promise, json, "{\"hour\":\"soon\"}", "If-None-Match", "*")
                .then()
                .statusCode(422)
                .body("problems.member", hasItem("hour"));
        put(promise, json, "{\"hour\":\"2026-01-06T18:00\"}", "If-None-Match", "*")
                .then()
                .statusCode(422);
        put(promise, json, "{\"hour\":\"2026-02-06T18:00\",\"zone\":\"Atlantis\"}", "If-None-Match", "*")
                .then()
                .statusCode(422);
        get(promise).then().statusCode(404);
        put(promise, json, "{\"hour\":\"2026-02-06T18:00\"}", "If-None-Match", "*")
                .then()
                .statusCode(201)
                .body("zone", equalTo("Europe/Vienna"))
                .body("at", equalTo("2026-02-06T17:00:00Z")); // CET is an hour ahead of UTC
        String seen = get(promise).header("ETag");
        put(promise, json, "{\"hour\":\"2026-02-06T19:00\"}", "If-None-Match", "*")
                .then()
                .statusCode(412);
        put(promise, json, "{\"hour\":\"2026-02-07T08:00\",\"zone\":\"Europe/Lisbon\"}", "If-Match", seen)
                .then()
                .statusCode(200)
                .body("at", equalTo("2026-02-07T08:00:00Z")); // WET is UTC
        programs.request(token).header("If-Match", seen).delete(promise).then().statusCode(412);
        programs.request(token).delete(promise).then().statusCode(428);
        programs.request(token)
                .header("If-Match", get(promise).header("ETag"))
                .delete(promise)
                .then()
                .statusCode(204);
        get("/lessons/" + lesson).then().body("state", equalTo("draft"));
    }

    @Test
    void aLessonGoesOutIsReadAndIsTakenBack() {
        String lesson = publishable("Out");
        var brought = programs.post(token).body("{}").post("/lessons/" + lesson + "/releases");
        brought.then().statusCode(202).body("number", equalTo(1));
        String release = "/releases/" + brought.jsonPath().getString("id");
        assertThat(brought.header("Location")).isEqualTo("/api/v1" + release);
        programs.built(brought.jsonPath().getString("id"));
        programs.bringOut(lesson, brought.jsonPath().getString("id"));
        get(release).then().body("state", equalTo("ready"));
        get("/lessons/" + lesson).then().body("state", equalTo("out"));
        get("/lessons/" + lesson + "/releases").then().body("items.id", equalTo(List.of(release.substring(10))));

        String sheet = get(release).jsonPath().getString("files.find { it.role == 'sheet' }.name");
        var file = get(release + "/files/" + sheet);
        file.then().statusCode(200).contentType("application/pdf");
        assertThat(file.asString()).isEqualTo("sheet.pdf");
        programs.request(token)
                .header("Range", "bytes=0-3") // RFC 9110 section 14.2
                .get(release + "/files/" + sheet)
                .then()
                .statusCode(206);
        programs.request(token)
                .header("Range", "bytes=1000-")
                .get(release + "/files/" + sheet)
                .then()
                .statusCode(416);
        get(release + "/files/nothing.pdf").then().statusCode(404);

        get("/lessons/" + lesson + "/statistics")
                .then()
                .statusCode(200)
                .body("downloads.complete", equalTo(0)); // a program of one's own is no student
        get("/series/" + studio.series.id() + "/statistics?weeks=2").then().body("lessons.lesson", hasItem(lesson));

        put(
                        "/lessons/" + lesson + "/promise",
                        "application/json",
                        "{\"hour\":\"2026-02-06T18:00\"}",
                        "If-None-Match",
                        "*")
                .then()
                .statusCode(409); // it is out
        String withdrawal = "/lessons/" + lesson + "/withdrawal";
        get(withdrawal).then().statusCode(404);
        put(withdrawal, "application/json", "{\"why\":\"A wrong note.\"}", "If-None-Match", "*")
                .then()
                .statusCode(201);
        get("/lessons/" + lesson)
                .then()
                .body("state", equalTo("withdrawn"))
                .body("withdrawal.why", equalTo("A wrong note."));
        programs.request(token)
                .header("If-Match", get(withdrawal).header("ETag"))
                .delete(withdrawal)
                .then()
                .statusCode(204);
        get(withdrawal).then().statusCode(404);

        programs.post(token) // the same again: nothing would be built otherwise
                .body("{\"note\":\"Bar 1.\"}")
                .post("/lessons/" + lesson + "/releases")
                .then()
                .statusCode(422);
    }

    @Test
    void aRecordingIsTakenIntoTheDraft() {
        String lesson = begin("Clicks");
        String path = "/lessons/" + lesson + "/recordings";
        programs.request(token)
                .contentType("audio/wav")
                .header("Idempotency-Key", LetIn.key())
                .body(Sent.wav())
                .post(path + "?name=clicks.wav&kind=drums")
                .then()
                .statusCode(201)
                .body("title", equalTo("clicks"))
                .body("kind", equalTo("drums"))
                .body("mediaType", equalTo("audio/wav"));
        programs.request(token)
                .contentType("audio/wav")
                .header("Idempotency-Key", LetIn.key())
                .body("no recording".getBytes(StandardCharsets.US_ASCII))
                .post(path)
                .then()
                .statusCode(422)
                .body("problems.detail.size()", equalTo(1));
        get(path).then().body("items.used", equalTo(List.of(true)));
        var document = studio.document(studio.episode(new EpisodeId(lesson)));
        assertThat(document.backingTracks()).hasSize(1);

        String recording = path + "/" + get(path).jsonPath().getString("items[0].id");
        programs.request(token).delete(recording).then().statusCode(204);
        get(path).then().body("items.size()", equalTo(0));
        assertThat(studio.document(studio.episode(new EpisodeId(lesson))).backingTracks())
                .isEmpty();
        programs.request(token).delete(recording).then().statusCode(404);
    }

    @Test
    void aPictureIsTakenWithItsWordsAndShownWhereTheNotesSaySo() {
        String lesson = begin("Seen");
        String path = "/lessons/" + lesson + "/pictures";
        var refused = programs.request(token)
                .contentType("image/png")
                .header("Idempotency-Key", LetIn.key())
                .body(PictureBytes.png())
                .post(path + "?name=hand.png");
        refused.then().statusCode(422).body("problems.size()", equalTo(1));
        var sent = programs.request(token)
                .contentType("image/png")
                .header("Idempotency-Key", LetIn.key())
                .queryParam("name", "hand.png")
                .queryParam("words", "The thumb [rests]")
                .body(PictureBytes.png())
                .post(path);
        sent.then()
                .statusCode(201)
                .body("words", equalTo("The thumb [rests]"))
                .body("width", equalTo(40))
                .body("used", equalTo(false));
        programs.request(token)
                .contentType("application/merge-patch+json")
                .header("If-Match", get("/lessons/" + lesson + "/draft").header("ETag"))
                .body(Map.of("notes", "Look.\n\n" + sent.jsonPath().getString("typed")))
                .patch("/lessons/" + lesson + "/draft")
                .then()
                .statusCode(200);
        get(path).then().body("items.used", equalTo(List.of(true)));

        String picture = path + "/" + sent.jsonPath().getString("id");
        programs.request(token).delete(picture).then().statusCode(204);
        get(path).then().body("items.size()", equalTo(0));
        programs.request(token).delete(picture).then().statusCode(404);
        get("/lessons/" + lesson + "/preflight")
                .then()
                .body("items.remarks.flatten().detail", hasItem(containsString("no such picture")));
    }

    /** IETF draft httpapi-idempotency-key-header, sections 2.1, 2.6 and 2.7. */
    @Test
    void aPostIsDoneOnceUnderItsKey() {
        String path = "/series/" + studio.series.id() + "/lessons";
        String key = LetIn.key();
        var first = begin(path, key, "{\"title\":\"Once\"}");
        var second = begin(path, key, "{\"title\":\"Once\"}");
        first.then().statusCode(201);
        second.then().statusCode(201).header("Location", equalTo(first.header("Location")));
        assertThat(second.asString()).isEqualTo(first.asString());
        begin(path, key, "{\"title\":\"Twice\"}").then().statusCode(422);
        begin(path, "once", "{\"title\":\"Once\"}").then().statusCode(400);
        programs.request(token)
                .contentType("application/json")
                .body("{\"title\":\"Once\"}")
                .post(path)
                .then()
                .statusCode(400);
        String refusedKey = LetIn.key();
        String refused = begin(path, refusedKey, "{\"title\":\"\"}")
                .then()
                .statusCode(422)
                .extract()
                .asString();
        begin(path, refusedKey, "{\"title\":\"\"}")
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body(equalTo(refused));
        assertThat(titles()).containsOnlyOnce("Once").doesNotContain("Twice", "");
    }

    /** As if the first were still being done, and as if the process had been killed meanwhile. */
    @Test
    void whatIsUnderWayIsNotDoneASecondTime() {
        String path = "/series/" + studio.series.id() + "/lessons";
        String key = LetIn.key();
        begin(path, key, "{\"title\":\"Slow\"}").then().statusCode(201);
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "update program_answer set status = null where repeat_key = ?", key.replace("\"", "")));
        begin(path, key, "{\"title\":\"Slow\"}").then().statusCode(409).header("Retry-After", equalTo("1"));
        assertThat(titles()).containsOnlyOnce("Slow");
    }

    /** RFC 6585 section 4. */
    @Test
    void aProgramThatSendsTooMuchIsToldHowLongToWait() {
        String busy = programs.token(studio.site.educator(), "Busy", ProgramScope.WRITE);
        String id = programs.tokens().of(studio.site.educator()).stream()
                .filter(one -> one.name().equals("Busy"))
                .findFirst()
                .orElseThrow()
                .id();
        var tries = new Tries(studio.site.groundbass().database().jdbi(), studio.site.clock());
        for (int i = 0; i < Limit.PROGRAM_POST.times; i++) {
            tries.take(Limit.PROGRAM_POST + " " + id, Limit.PROGRAM_POST.times, Duration.ofDays(1));
        }
        programs.post(busy)
                .body("{\"title\":\"Too many\"}")
                .post("/series/" + studio.series.id() + "/lessons")
                .then()
                .statusCode(429)
                .header("Retry-After", notNullValue());
        assertThat(titles()).doesNotContain("Too many");
    }

    private static Response begin(String path, String key, String body) {
        return programs.request(token)
                .contentType("application/json")
                .header("Idempotency-Key", key)
                .body(body)
                .post(path);
    }

    private static List<String> titles() {
        return get("/series/" + studio.series.id() + "/lessons?limit=200")
                .jsonPath()
                .getList("items.title");
    }

    @Test
    void ofManyAtOnceOneIsDone() {
        String path = "/series/" + studio.series.id() + "/lessons";
        String key = LetIn.key();
        var sent = IntStream.range(0, 6)
                .mapToObj(i -> CompletableFuture.supplyAsync(() -> begin(path, key, "{\"title\":\"Crowd\"}")))
                .toList();
        var answers = new ArrayList<Integer>();
        sent.forEach(one -> answers.add(one.join().statusCode()));
        assertThat(answers).contains(201).containsAnyOf(201, 409).allMatch(status -> status == 201 || status == 409);
        assertThat(titles()).containsOnlyOnce("Crowd");
    }

    @Test
    void theRecordSaysWhichProgramDidIt() {
        begin("Recorded");
        String audit = studio.browser()
                .header("Accept-Language", "en")
                .get("/desk/audit")
                .asString();
        assertThat(audit).contains("Trial Studio, by the program “Week”");
    }

    /** RFC 9457 section 3.1.3: sentences are for people, in the language that is asked for. */
    @Test
    void problemsAreToldInTheLanguageThatIsAskedFor() {
        var answer = programs.request(token).header("Accept-Language", "de").get("/lessons/nothing");
        assertThat(new JsonPath(answer.asString()).getString("title")).isEqualTo("Hier ist nichts");
    }
}
