package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import groundbass.catalog.educator.ProgramScope;
import groundbass.web.desk.Studio;
import groundbass.web.program.Description.Operation;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.slf4j.LoggerFactory;

/** Who is let in: tried on every operation that is described, and so on every route. */
class AdmissionTest {
    private static final Description description = new Description();
    private static final Studio studio = new Studio();
    private static final LetIn programs = new LetIn(studio, description);
    private static String all;
    private static String none;
    private static String strangersRelease;

    @BeforeAll
    static void letIn() {
        all = programs.token(studio.site.educator(), "All", ProgramScope.values());
        none = programs.token(studio.site.educator(), "Statistics", ProgramScope.STATISTICS);
        var strangers = programs.token(programs.stranger(), "Theirs", ProgramScope.values());
        String lesson = "/lessons/" + studio.strangersEpisode.id();
        programs.request(strangers)
                .contentType("application/merge-patch+json")
                .header("If-Match", "*")
                .body("{\"line\":\"bar 1\\n1 2 3 4  A0, A0, A0, A0\\n\",\"tempos\":\"100\",\"rounds\":\"1\","
                        + "\"rights\":{\"statement\":\"Own.\",\"clearance\":\"own\"}}")
                .patch(lesson + "/draft")
                .then()
                .statusCode(200);
        strangersRelease = programs.post(strangers)
                .body("{}")
                .post(lesson + "/releases")
                .then()
                .statusCode(202)
                .extract()
                .path("id");
        programs.built(strangersRelease);
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    static List<Operation> operations() {
        return description.operations().stream()
                .filter(operation -> !operation.isOpen())
                .toList();
    }

    static Stream<Operation> operationsOfSomething() {
        return operations().stream().filter(operation -> operation.path().contains("{"));
    }

    /** With whatever else the operation wants, so that nothing but who asks is in the way. */
    private static Response send(RequestSpecification request, Operation operation) {
        var body = operation.described().at("/requestBody/content").fieldNames();
        if (body.hasNext()) {
            request.contentType(body.next()).body("{}".getBytes(StandardCharsets.US_ASCII));
        }
        if (operation.method().equals("post")) {
            request.header("Idempotency-Key", LetIn.key());
        } else if (!operation.method().equals("get")) {
            request.header("If-Match", "*");
        }
        String path = operation
                .path()
                .replace("/api/v1", "")
                .replace("{series}", studio.strangersEpisode.series().value())
                .replace("{lesson}", studio.strangersEpisode.id().value())
                .replace("{release}", strangersRelease)
                .replace("{recording}", "a".repeat(16))
                .replace("{picture}", "a".repeat(16))
                .replace("{name}", "sheet.pdf");
        return request.request(operation.method().toUpperCase(Locale.ROOT), path);
    }

    /** RFC 6750 section 3: the scheme, and no error code for whoever brought nothing. */
    @ParameterizedTest
    @MethodSource("operations")
    void nobodyIsLetInWithoutAToken(Operation operation) {
        send(programs.bare(), operation)
                .then()
                .statusCode(401)
                .header("WWW-Authenticate", equalTo("Bearer realm=\"groundbass\""))
                .contentType("application/problem+json");
    }

    /** The cookie of the very educator, from a page of the site. */
    @ParameterizedTest
    @MethodSource("operations")
    void aSessionOpensNothing(Operation operation) {
        send(programs.bare().cookie(studio.cookie).header("Sec-Fetch-Site", "same-origin"), operation)
                .then()
                .statusCode(401);
    }

    /** RFC 6750 section 3.1: insufficient_scope, with the scope that is needed. */
    @ParameterizedTest
    @MethodSource("operations")
    void aTokenForSomethingElseOpensNothing(Operation operation) {
        if (operation.scope().isEmpty()) {
            return; // says what any token may
        }
        var other = operation.scope().get().equals("statistics") ? ProgramScope.READ : ProgramScope.STATISTICS;
        var token = other == ProgramScope.STATISTICS
                ? none
                : programs.token(studio.site.educator(), "Read " + operation, ProgramScope.READ);
        send(programs.request(token), operation)
                .then()
                .statusCode(403)
                .header("WWW-Authenticate", containsString("error=\"insufficient_scope\""))
                .header(
                        "WWW-Authenticate",
                        containsString("scope=\"" + operation.scope().get() + "\""));
    }

    @ParameterizedTest
    @MethodSource("operationsOfSomething")
    void whatIsSomebodyElsesIsNotThere(Operation operation) {
        send(programs.request(all), operation).then().statusCode(404);
    }

    /** RFC 6750 section 3.1: invalid_token; section 2.3: a token in the address would be logged, and is not taken. */
    @Test
    void aTokenThatIsNotGoodIsSaidToBeSo() {
        for (String wrong : List.of("groundbass_" + "a".repeat(43), "abc", all.toUpperCase(Locale.ROOT))) {
            programs.request(wrong)
                    .get("/series")
                    .then()
                    .statusCode(401)
                    .header("WWW-Authenticate", containsString("error=\"invalid_token\""));
        }
        programs.bare()
                .queryParam("access_token", all)
                .get("/series")
                .then()
                .statusCode(401)
                .header("WWW-Authenticate", not(containsString("error")));
        programs.bare()
                .header("Authorization", "bearer " + all) // RFC 9110 section 11.1: in any case
                .get("/series")
                .then()
                .statusCode(200);
    }

    /** Whoever looks after the site sees who tries what. */
    @Test
    void whoIsRefusedStandsInTheLogWithoutTheirSecret() {
        var log = (Logger) LoggerFactory.getLogger(Callers.class);
        var written = new ListAppender<ILoggingEvent>();
        written.start();
        log.addAppender(written);
        try {
            programs.request(none).get("/series").then().statusCode(403);
            programs.request("groundbass_" + "a".repeat(43))
                    .get("/series")
                    .then()
                    .statusCode(401);
            programs.bare().get("/series").then().statusCode(401);
        } finally {
            log.detachAppender(written);
        }
        var id = programs.tokens().of(studio.site.educator()).stream()
                .filter(token -> token.name().equals("Statistics"))
                .findFirst()
                .orElseThrow()
                .id();
        assertThat(written.list).hasSize(2);
        assertThat(written.list.get(0).getFormattedMessage())
                .contains(id, "read")
                .doesNotContain(none);
        assertThat(written.list.get(1).getFormattedMessage()).contains("401").doesNotContain("aaaa");
    }

    @Test
    void aTokenOpensNothingAtTheDesk() {
        studio.site
                .browser()
                .header("Authorization", "Bearer " + all)
                .get("/desk")
                .then()
                .statusCode(303);
        studio.site
                .browser()
                .cookie(new Cookie.Builder("session", all).build())
                .get("/desk")
                .then()
                .statusCode(303);
        studio.site
                .program()
                .header("Authorization", "Bearer " + all)
                .header("Sec-Fetch-Site", "same-origin")
                .post("/desk/account/sessions/all")
                .then()
                .statusCode(401);
    }

    /** WHATWG Fetch, section "HTTP CORS protocol": no header of it, on any answer, so no other site's script may read. */
    @Test
    void scriptsOfOtherSitesAreLetInNowhere() {
        var asked = studio.site
                .program()
                .header("Origin", "https://elsewhere.example")
                .header("Access-Control-Request-Method", "GET")
                .header("Access-Control-Request-Headers", "authorization")
                .options("/api/v1/series");
        asked.then().statusCode(405).header("Access-Control-Allow-Origin", nullValue());
        programs.request(all)
                .header("Origin", "https://elsewhere.example")
                .get("/series")
                .then()
                .statusCode(200)
                .header("Access-Control-Allow-Origin", nullValue());
    }

    @Test
    void aTokenEndsWhenItIsWithdrawnWhenItRunsOutAndWithTheSessions() {
        var who = studio.site.educator();
        var withdrawn = programs.token(who, "Withdrawn", ProgramScope.READ);
        programs.tokens().of(who).stream()
                .filter(token -> token.name().equals("Withdrawn"))
                .forEach(token -> programs.tokens().withdraw(programs.stranger(), token.id()));
        programs.request(withdrawn).get("/series").then().statusCode(200);
        programs.tokens().of(who).stream()
                .filter(token -> token.name().equals("Withdrawn"))
                .forEach(token -> programs.tokens().withdraw(who, token.id()));
        programs.request(withdrawn).get("/series").then().statusCode(401);

        try (var other = new Studio()) {
            var there = new LetIn(other, description);
            var first = there.token(other.site.educator(), "First", ProgramScope.READ);
            other.form().post("/desk/account/sessions/all").then().statusCode(303);
            there.request(first).get("/series").then().statusCode(401);
            var second = there.token(other.site.educator(), "Second", ProgramScope.READ);
            other.site.clock().advance(Duration.ofDays(90).minusSeconds(1));
            there.request(second).get("/series").then().statusCode(200);
            other.site.clock().advance(Duration.ofSeconds(1));
            there.request(second).get("/series").then().statusCode(401);
        }
    }

    /** RFC 6585 section 4; 600 in ten minutes are ours, for all programs of an educator. */
    @Test
    void aProgramThatAsksTooOftenIsToldHowLongToWait() {
        try (var other = new Studio()) {
            var there = new LetIn(other, description);
            var token = there.token(other.site.educator(), "Busy", ProgramScope.READ);
            var another = there.token(other.site.educator(), "Busy too", ProgramScope.READ);
            String figures = "/api/v1/series/" + other.series.id() + "/statistics";
            for (int i = 0; i < 600; i++) { // allowed or not, by this program or that
                boolean allowed = i % 3 > 0;
                other.site
                        .program()
                        .header("Authorization", "Bearer " + (i % 2 == 0 ? token : another))
                        .get(allowed ? "/api/v1" : figures)
                        .then()
                        .statusCode(allowed ? 200 : 403);
            }
            assertThat(there.request(token).get("").statusCode()).isEqualTo(429);
            assertThat(there.request(another).get("").statusCode()).isEqualTo(429);
            other.site.clock().advance(Duration.ofMinutes(10));
            there.request(token).get("").then().statusCode(200);
        }
    }
}
