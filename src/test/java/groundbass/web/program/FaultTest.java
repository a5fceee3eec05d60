package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import groundbass.web.Stage;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/** What goes wrong on our side, below the address of the interface. */
class FaultTest {
    private static final String TOKEN = "groundbass_" + "q".repeat(43);

    private static final PageGroup BROKEN = routes -> routes.get("/api/v1/broken", Role.EXEMPT, ctx -> {
        throw new IllegalStateException("the inside");
    });

    /** RFC 9457 section 3: a problem document, also for whoever says that they read pages; what was inside stays inside. */
    @Test
    void aFaultHasItsNumberAndKeepsItsInside() {
        try (var stage = Stage.with(BROKEN)) {
            stage.request()
                    .accept("text/html")
                    .get("/api/v1/broken")
                    .then()
                    .statusCode(500)
                    .contentType("application/problem+json")
                    .body("status", equalTo(500))
                    .body("instance", startsWith("urn:groundbass:fault:"))
                    .body(not(containsString("the inside")));
        }
    }

    /** RFC 6750 section 5.3: neither the header, nor what somebody puts into an address against the rules. */
    @Test
    void noTokenGetsIntoTheLog() {
        var lines = new ListAppender<ILoggingEvent>();
        lines.start();
        var root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.addAppender(lines);
        try (var stage = Stage.with(BROKEN)) {
            stage.request()
                    .header("Authorization", "Bearer " + TOKEN)
                    .queryParam("access_token", TOKEN)
                    .get("/api/v1/broken")
                    .then()
                    .statusCode(500);
        } finally {
            root.detachAppender(lines);
        }
        assertThat(lines.list)
                .isNotEmpty()
                .noneMatch(line -> line.getFormattedMessage().contains(TOKEN)
                        || String.valueOf(line.getThrowableProxy()).contains(TOKEN));
    }
}
