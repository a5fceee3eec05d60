package groundbass.web.general;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.site.Secret;
import groundbass.web.Site;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/**
 * Figures of the process. Their form is that of Prometheus, "Exposition formats", text format version 0.0.4; their names
 * are those that Micrometer's reference gives ("JVM metrics", "http.server.requests"), with what that format makes of them.
 */
class MetricsPageTest {
    private static final String TOKEN = "a-token-that-nobody-guesses";

    static final Site site = Site.open(config -> config.watchedWith(new Secret(TOKEN)));

    /** A sample: name, labels in braces, a number, perhaps a time. */
    private static final Pattern SAMPLE =
            Pattern.compile("[a-zA-Z_:][a-zA-Z0-9_:]*(\\{([a-zA-Z_][a-zA-Z0-9_]*=\"([^\"\\\\]|\\\\.)*\",?)*\\})?"
                    + " ([-+]?[0-9.]+([eE][-+]?[0-9]+)?|NaN|[+-]Inf)( -?[0-9]+)?");

    @AfterAll
    static void close() {
        site.close();
    }

    private static String shown() {
        var answer = site.program().header("Authorization", "Bearer " + TOKEN).get("/metrics");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).isEqualTo("text/plain; version=0.0.4; charset=utf-8");
        assertThat(answer.header("Cache-Control")).isEqualTo("no-store");
        return answer.asString();
    }

    @Test
    void everyLineIsASampleOrAComment() {
        assertThat(shown().lines().filter(line -> !line.startsWith("#")))
                .hasSizeGreaterThan(50)
                .allSatisfy(line -> assertThat(line).matches(SAMPLE));
    }

    @Test
    void memoryConnectionsRequestsAndWorkThatWaitsAreTold() {
        assertThat(shown())
                .contains(
                        "jvm_memory_used_bytes{", "process_uptime_seconds", "logback_events_total{", "disk_free_bytes{")
                .contains("hikaricp_connections_active{pool=\"database\"}")
                .contains("groundbass_letters_waiting 0.0", "groundbass_releases_unfinished 0.0");
    }

    /** An address may open something, so that none stands in the figures, whoever asks for it; no figure spells a word. */
    @Test
    void requestsAreCountedByRouteAndNeverByAddress() {
        site.browser().get("/privacy").then().statusCode(200);
        site.browser().get("/e/does-not-exist-heliotrope").then().statusCode(404);
        site.browser().get("/no-such-place-heliotrope").then().statusCode(404);
        assertThat(shown())
                .contains(
                        "http_server_requests_seconds_count{method=\"GET\",outcome=\"SUCCESS\",status=\"200\",uri=\"/privacy\"} 1")
                .contains("outcome=\"CLIENT_ERROR\",status=\"404\",uri=\"NOT_FOUND\"")
                .doesNotContain("heliotrope");
    }

    /** RFC 6750 section 3: who shows no good token is asked for one. */
    @Test
    void nobodyElseReadsThem() {
        for (var asking : new String[] {"", "Bearer wrong", "Basic " + TOKEN, "Bearer " + TOKEN + "x"}) {
            var answer = asking.isEmpty()
                    ? site.program().get("/metrics")
                    : site.program().header("Authorization", asking).get("/metrics");
            assertThat(answer.statusCode()).as(asking).isEqualTo(401);
            assertThat(answer.header("WWW-Authenticate")).startsWith("Bearer ");
            assertThat(answer.asString()).doesNotContain("jvm_");
        }
        assertThat(site.browser().cookie(site.atTheDesk()).get("/metrics").statusCode())
                .as("a session opens nothing here")
                .isEqualTo(401);
    }

    @Test
    void withoutATokenThereAreNone() {
        try (var usual = Site.open()) {
            assertThat(usual.browser().get("/metrics").statusCode()).isEqualTo(404);
        }
    }
}
