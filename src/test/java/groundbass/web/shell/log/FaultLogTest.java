package groundbass.web.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import groundbass.web.Stage;
import groundbass.web.shell.Role;
import io.javalin.http.Context;
import java.sql.SQLTransientConnectionException;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.ConnectionException;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/**
 * What the log says of requests that failed. OWASP ASVS 5.0, 16.2.5: no credentials in it, and a link that signs somebody
 * in is one.
 */
class FaultLogTest {
    private static final String SECRET = "q3v9secretlink";

    private static List<String> logged(String path, Exception fault) {
        var lines = new ListAppender<ILoggingEvent>();
        lines.start();
        var root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.addAppender(lines);
        try (var stage = Stage.with(routes -> {
            routes.get("/sign-in/{token}", Role.ANYONE, ctx -> fail(ctx, fault));
            routes.get("/e/{id}", Role.ANYONE, ctx -> fail(ctx, fault));
        })) {
            assertThat(stage.request().get(path).statusCode()).isGreaterThanOrEqualTo(500);
        } finally {
            root.detachAppender(lines);
        }
        return lines.list.stream()
                .filter(line -> line.getLoggerName().startsWith("groundbass.web.shell"))
                .map(ILoggingEvent::getFormattedMessage)
                .toList();
    }

    /** OWASP ASVS 5.0, 16.2.1: what belongs together can be found together. */
    @Test
    void everyLineOfARequestCarriesItsIdAndThePageOfItsFaultToo() {
        var lines = new ListAppender<ILoggingEvent>();
        lines.start();
        var root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.addAppender(lines);
        var shown = new ArrayList<String>();
        try (var stage = Stage.with(routes -> routes.get("/e/{id}", Role.ANYONE, ctx -> {
            LoggerFactory.getLogger("groundbass.trial").warn("on the way");
            fail(ctx, new IllegalStateException("the inside"));
        }))) {
            for (int i = 0; i < 2; i++) {
                shown.add(stage.request().get("/e/" + i).path("instance"));
            }
        } finally {
            root.detachAppender(lines);
        }
        var ids = lines.list.stream()
                .filter(line -> line.getLoggerName().startsWith("groundbass."))
                .map(line -> line.getMDCPropertyMap().getOrDefault("request", "none"))
                .toList();
        assertThat(ids).hasSize(4).doesNotContain("none");
        assertThat(ids.get(0)).isEqualTo(ids.get(1)).isNotEqualTo(ids.get(2));
        assertThat(ids.get(2)).isEqualTo(ids.get(3));
        assertThat(shown).containsExactly("urn:groundbass:fault:" + ids.get(0), "urn:groundbass:fault:" + ids.get(2));
    }

    private static void fail(Context ctx, Exception fault) throws Exception {
        assertThat(ctx.pathParamMap()).isNotEmpty();
        throw fault;
    }

    @Test
    void aLinkThatOpensSomethingIsNamedByItsRoute() {
        var faults = new Exception[] {
            new IllegalStateException("the inside"),
            new ConnectionException(new SQLTransientConnectionException("request timed out"))
        };
        for (var fault : faults) {
            assertThat(logged("/sign-in/" + SECRET, fault))
                    .as(fault.toString())
                    .anyMatch(line -> line.contains("GET /sign-in/{token}"))
                    .noneMatch(line -> line.contains(SECRET));
        }
    }

    /** The path as it was sent: a line feed in it would begin a line that nobody of ours wrote. */
    @Test
    void everyOtherAddressIsToldAsItWasSent() {
        assertThat(logged("/e/lesson-7", new IllegalStateException("the inside")))
                .anyMatch(line -> line.contains("GET /e/lesson-7"));
    }
}
