package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import groundbass.store.SettableClock;
import groundbass.web.Site;
import groundbass.web.Stage;
import groundbass.web.gate.RawRequest;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.MemoryLimits;
import groundbass.web.shell.limit.RateLimits;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What every request passes: origin, role, limit, errors. */
class DoorTest {
    static final String HOME = "https://grooves.example";
    static final SettableClock clock = SettableClock.at(Site.START);
    static final RateLimits limits = new MemoryLimits(clock);
    static final PrincipalResolver principals = token -> switch (token.orElse("")) {
        case "nobody asks" -> throw new AssertionError("looked up");
        case "ada" -> Principal.of(EducatorId.next(), SiteStanding.OWNER);
        case "ben" -> Principal.of(StudentId.next());
        default -> Principal.UNKNOWN;
    };
    static final Stage stage = Stage.at(HOME, principals, pages -> List.of(DoorTest::routes));

    static void routes(Routes routes) {
        routes.post("/change", Role.ANYONE, ctx -> ctx.result("changed " + ctx.formParam("what")));
        routes.get("/fine", Role.ANYONE, ctx -> ctx.result(Flash.take(ctx).toString()));
        routes.postFiles("/upload", Role.ANYONE, ctx -> ctx.result(ctx.uploadedFile("file") == null ? "none" : "some"));
        routes.post("/api", Role.EXEMPT, ctx -> ctx.result("changed"));
        routes.get("/me", Role.STUDENT, ctx -> ctx.result("student"));
        routes.get("/desk", Role.EDUCATOR, ctx -> ctx.result("desk"));
        routes.post("/desk", Role.EDUCATOR, ctx -> ctx.result("saved"));
        routes.get("/fault", Role.ANYONE, ctx -> {
            throw new IllegalStateException("the secret inside");
        });
        routes.get("/hell", Role.ANYONE, ctx -> {
            throw new StackOverflowError("the secret inside");
        });
        routes.post("/sign-in", Role.ANYONE, ctx -> {
            limits.demand(ctx, Limit.SET_UP);
            ctx.result("tried");
        });
    }

    @AfterAll
    static void close() {
        stage.close();
    }

    /** W3C Fetch Metadata Request Headers, section 2.3: the four values of Sec-Fetch-Site. */
    @ParameterizedTest
    @CsvSource({"same-origin, 200", "same-site, 403", "cross-site, 403", "none, 403"})
    void aChangeMustComeFromThisSite(String site, int status) {
        var request = stage.request().header("Sec-Fetch-Site", site).header("Origin", HOME);
        assertThat(request.post("/change").statusCode()).isEqualTo(status);
    }

    /** RFC 6454 section 7: what a browser writes into Origin, "null" where it will not tell. */
    @ParameterizedTest
    @CsvSource({
        "https://grooves.example, 200",
        "http://grooves.example, 403",
        "https://grooves.example:8443, 403",
        "https://grooves.example.evil.example, 403",
        "https://evil.example, 403",
        "null, 403"
    })
    void anOlderBrowserIsKnownByOrigin(String origin, int status) {
        assertThat(stage.request().header("Origin", origin).post("/change").statusCode())
                .isEqualTo(status);
    }

    @Test
    void theAddressThatWasTypedCountsAsThisSite() {
        String typed = "http://127.0.0.1:" + stage.port();
        assertThat(stage.request().header("Origin", typed).post("/change").statusCode())
                .isEqualTo(200);
    }

    /** RFC 6454 section 4: the scheme is part of an origin; what comes without encryption anybody on the way has written. */
    @Test
    void theSameNameWithoutEncryptionIsAnotherSite() {
        String host = URI.create(HOME).getAuthority();
        var request = stage.request().header("Host", host).header("Origin", "http://" + host);
        assertThat(request.post("/change").statusCode()).isEqualTo(403);
    }

    @Test
    void aChangeWithoutAnyOriginIsRefusedExceptWhereAProofComesWithIt() {
        assertThat(stage.request().post("/change").statusCode()).isEqualTo(403);
        assertThat(stage.request().post("/api").statusCode()).isEqualTo(200);
    }

    @Test
    void everyRoleHasItsDoor() {
        assertThat(as("ben").get("/me").asString()).isEqualTo("student");
        assertThat(as("ada").get("/desk").asString()).isEqualTo("desk");
        assertThat(as("ben").get("/desk").statusCode()).isEqualTo(303);
        assertThat(as("ada").get("/me").statusCode()).isEqualTo(303);
    }

    @Test
    void aReaderIsSentToTheFittingSignInAndBack() {
        as("nobody")
                .get("/me?page=2")
                .then()
                .statusCode(303)
                .header("Location", containsString("/sign-in?next=%2Fme%3Fpage%3D2"));
        as("nobody")
                .get("/desk")
                .then()
                .statusCode(303)
                .header("Location", containsString("/desk/sign-in?next=%2Fdesk"));
    }

    @Test
    void aFormWithoutSignInIsNotSentAway() {
        as("nobody")
                .header("Sec-Fetch-Site", "same-origin")
                .post("/desk")
                .then()
                .statusCode(401)
                .header("WWW-Authenticate", equalTo("Session"))
                .body(containsString("Please sign in first"), not(containsString("saved")));
    }

    @Test
    void aFaultHasANumberAndTellsNothing() {
        String page =
                as("nobody").get("/fault").then().statusCode(500).extract().asString();
        assertThat(page).contains("please give the number").doesNotContain("secret", "Exception", "groundbass.web");
        stage.request()
                .get("/fault")
                .then()
                .statusCode(500)
                .contentType("application/problem+json")
                .body("instance", startsWith("urn:groundbass:fault:"))
                .body(not(containsString("secret")));
    }

    @Test
    void evenAnErrorOfTheMachineTellsOnlyItsNumber() {
        var answer = as("nobody").get("/hell");
        assertThat(answer.statusCode()).isEqualTo(500);
        assertThat(answer.asString()).matches("500 [a-z0-9]{16}\n");
    }

    @Test
    void aFormThatIsTooLargeIsRefused() {
        stage.request()
                .header("Sec-Fetch-Site", "same-origin")
                .contentType("application/x-www-form-urlencoded")
                .body("what=" + "x".repeat(3_000_000))
                .post("/change")
                .then()
                .statusCode(413)
                .body("status", equalTo(413));
    }

    /** A recording may have 100 MB; this one has one more. */
    @Test
    void anUploadThatIsTooLargeIsRefused() {
        as("ada")
                .header("Sec-Fetch-Site", "same-origin")
                .multiPart("file", "groove.wav", new byte[101_000_000 + 1_000_000 * 6])
                .post("/upload")
                .then()
                .statusCode(413);
    }

    @Test
    void anUploadIsRead() {
        as("ada")
                .header("Sec-Fetch-Site", "same-origin")
                .multiPart("file", "groove.wav", new byte[3_000_000])
                .post("/upload")
                .then()
                .statusCode(200)
                .body(equalTo("some"));
    }

    /** What is refused is refused before it has come; the sender of 30 MB has sent next to nothing of it. */
    @Test
    void filesAreTakenOnlyWhereOneSendsFilesAndOnlyFromWhoMay() {
        String file = "POST %s HTTP/1.1\r\nHost: a\r\nSec-Fetch-Site: same-origin\r\nContent-Type: multipart/form-data;"
                + " boundary=x\r\nContent-Length: 30000000\r\n\r\n";
        assertThat(RawRequest.status(stage.port(), file.formatted("/change"))).isEqualTo(415);
        assertThat(RawRequest.status(stage.port(), file.formatted("/desk"))).isIn(401, 415);
        assertThat(RawRequest.status(stage.port(), file.formatted("/upload"))).isEqualTo(413);
    }

    /** RFC 3986 section 2.1: a percent sign is followed by two hexadecimal digits. */
    @ParameterizedTest
    @ValueSource(strings = {"what=%zz", "what=%4", "what=100%&more=1", "%=1"})
    void aFormThatCannotBeReadIsTheSendersMistake(String form) {
        int status = stage.request()
                .header("Sec-Fetch-Site", "same-origin")
                .contentType("application/x-www-form-urlencoded")
                .body(form)
                .post("/change")
                .statusCode();
        assertThat(status).isEqualTo(400);
    }

    /** RFC 9110 section 15.5.16: a media type with a character set that nobody knows is the sender's mistake. */
    @ParameterizedTest
    @ValueSource(strings = {"nope", "-", "\"\"", "\u00e4"})
    void aCharacterSetThatNobodyKnowsIsTheSendersMistake(String charset) {
        int status = RawRequest.status(
                stage.port(),
                "POST /change HTTP/1.1\r\nHost: a\r\nSec-Fetch-Site: same-origin\r\nContent-Type:"
                        + " application/x-www-form-urlencoded; charset=" + charset
                        + "\r\nContent-Length: 6\r\nConnection: close\r\n\r\nwhat=1");
        assertThat(status).isBetween(400, 499);
    }

    /** Headers as browsers never write them; none of them is a fault of ours. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Accept-Language: -",
                "Accept-Language: en-",
                "Accept-Language: *-*-*",
                "Accept-Language: ;q=1",
                "Accept-Language: en;q=",
                "Accept-Language: a-b-c-d-e-f-g-h",
                "Cookie: language=-",
                "Cookie: language=;",
                "Cookie: =",
                "Cookie: language=\"-",
                "Content-Type: multipart/form-data",
                "Content-Type: /",
                "Content-Type: multipart/form-data; boundary=",
                "Content-Type: application/x-www-form-urlencoded; charset=utf-8;;",
                "Content-Type: application/x-www-form-urlencoded; charset=UTF-16;q=*",
                "Accept: text/html;q=x",
                "If-None-Match: -",
                "Range: bytes=-",
                "Origin: -",
                "Accept-Encoding: gzip;q=-",
                "If-Modified-Since: -"
            })
    void noHeaderIsAFaultOfOurs(String header) {
        for (String path : List.of("GET /fine", "GET /none", "POST /change")) {
            int status = RawRequest.status(
                    stage.port(),
                    path + " HTTP/1.1\r\nHost: a\r\nAccept: text/html\r\nSec-Fetch-Site: same-origin\r\n" + header
                            + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
            assertThat(status).as(path).isBetween(200, 499);
        }
    }

    @Test
    void aMethodComesFromTheRequestLineAlone() {
        stage.request()
                .header("Sec-Fetch-Site", "same-origin")
                .header("X-HTTP-Method-Override", "PUT")
                .post("/change")
                .then()
                .statusCode(200);
    }

    /** RFC 6585 section 4: 429 may carry Retry-After. */
    @Test
    void tooManyTriesMustWait() {
        for (int i = 0; i < Limit.SET_UP.times; i++) {
            assertThat(signIn().statusCode()).isEqualTo(200);
        }
        var refused = signIn();
        assertThat(refused.statusCode()).isEqualTo(429);
        assertThat(Integer.parseInt(refused.header("Retry-After"))).isBetween(1, 91);
        clock.advance(Duration.ofMinutes(2));
        assertThat(signIn().statusCode()).isEqualTo(200);
    }

    /**
     * OWASP ASVS 5.0, 3.4: every answer has them, also that to a request which is not HTTP (RFC 9112 section 3: the request
     * line has three parts) and that which an error of the machine left.
     */
    @Test
    void whatNeverReachesARouteCarriesTheHeadersToo() {
        String broken = "NONSENSE\r\nHost: a\r\nConnection: close\r\n\r\n";
        String error = "GET /hell HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n";
        for (String request : List.of(broken, error)) {
            assertThat(RawRequest.head(stage.port(), request))
                    .anyMatch(line -> line.startsWith("Content-Security-Policy: ")
                            && line.contains("frame-ancestors 'none'")
                            && line.contains("object-src 'none'")
                            && line.contains("base-uri 'none'"))
                    .contains("X-Content-Type-Options: nosniff")
                    .anyMatch(line -> line.startsWith("Strict-Transport-Security: max-age="));
        }
    }

    /** RFC 6797 section 6.1; only where the site is known by https. */
    @Test
    void aSecureSiteSaysSo() {
        assertThat(stage.request().get("/").header("Strict-Transport-Security")).startsWith("max-age=");
    }

    private static io.restassured.response.Response signIn() {
        return stage.request().header("Sec-Fetch-Site", "same-origin").post("/sign-in");
    }

    private static RequestSpecification as(String token) {
        return stage.request().accept("text/html").cookie("__Host-session", token);
    }

    /** A route whose callers bring a proof of their own. */
    @Test
    void aSessionIsNotLookedUpWhereItOpensNothing() {
        stage.request()
                .cookie("__Host-session", "nobody asks")
                .post("/api")
                .then()
                .statusCode(200)
                .body(equalTo("changed"));
    }
}
