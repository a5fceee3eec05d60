package groundbass.web.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import groundbass.web.Stage;
import groundbass.web.shell.Installation;
import groundbass.web.shell.Principal;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.MemoryLimits;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.NotFoundResponse;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/** OWASP ASVS 5.0, 16.3.2 and 16.3.3: refusals, and tries to get round the rules, leave a line. */
class RefusalLogTest {
    private static final EducatorId ADA = EducatorId.next();
    private static final PrincipalResolver KNOWN =
            token -> token.isPresent() ? Principal.of(ADA, SiteStanding.GUEST) : Principal.UNKNOWN;
    private static final RateLimits LIMITS =
            new MemoryLimits(Clock.fixed(Instant.parse("2030-03-01T12:00:00Z"), ZoneOffset.UTC));

    private static void routes(Routes routes) {
        routes.post("/change", Role.ANYONE, ctx -> ctx.result("changed"));
        routes.post("/desk/password", Role.EDUCATOR, ctx -> LIMITS.demand(ctx, Limit.SET_UP));
        routes.post("/desk/people", Role.OWNER, ctx -> ctx.result("invited"));
        routes.get("/desk/episodes/{id}", Role.EDUCATOR, ctx -> {
            throw new NotFoundResponse();
        });
        routes.get("/e/{id}", Role.ANYONE, ctx -> {
            throw new NotFoundResponse();
        });
    }

    private static List<String> logged(Consumer<Stage> asking) {
        var lines = new ListAppender<ILoggingEvent>();
        lines.start();
        var log = (Logger) LoggerFactory.getLogger(RefusalLog.class);
        log.addAppender(lines);
        var site = new Installation(URI.create("https://grooves.example"), true, false, 0, Optional.empty());
        try (var stage = Stage.at(site, KNOWN, pages -> List.of(RefusalLogTest::routes))) {
            asking.accept(stage);
        } finally {
            log.detachAppender(lines);
        }
        return lines.list.stream().map(ILoggingEvent::getFormattedMessage).toList();
    }

    private static RequestSpecification ada(Stage stage) {
        return stage.request().cookie("__Host-session", "a secret").header("Sec-Fetch-Site", "same-origin");
    }

    @Test
    void aFormOfAnotherSiteLeavesALine() {
        assertThat(logged(stage -> stage.request()
                        .header("Sec-Fetch-Site", "cross-site")
                        .header("Origin", "https://evil.example")
                        .post("/change")))
                .containsExactly("POST /change: 403, sent by no page of this site; by somebody, time 1 in an hour");
    }

    @Test
    void anotherHostNameLeavesALine() {
        assertThat(logged(
                        stage -> stage.request().header("Host", "evil.example").get("/e/1")))
                .singleElement()
                .asString()
                .contains("421, another host name")
                .doesNotContain("evil");
    }

    @Test
    void whatSomebodyAtADeskMayNotLeavesALineWithWhoItWas() {
        var lines = logged(stage -> {
            ada(stage).post("/desk/people");
            ada(stage).get("/desk/episodes/7");
            stage.request().header("Sec-Fetch-Site", "same-origin").post("/desk/people");
            ada(stage).get("/e/7");
        });
        assertThat(lines).hasSize(3).noneMatch(line -> line.contains("a secret"));
        assertThat(lines.get(0)).contains("POST /desk/people: 403, needs OWNER; by educator " + ADA.value());
        assertThat(lines.get(1)).contains("GET /desk/episodes/7: 404").contains(ADA.value());
        assertThat(lines.get(2)).contains("401").contains("by somebody");
    }

    @Test
    void aUsedUpAllowanceIsNamedAndAFloodFillsNoDisk() {
        int refused = 120;
        var lines = logged(stage -> {
            for (int i = 0; i < Limit.SET_UP.times + refused; i++) {
                ada(stage).post("/desk/password");
            }
        });
        assertThat(lines).hasSize(3).allMatch(line -> line.contains("429, the limit SET_UP is used up"));
        assertThat(lines.get(2)).endsWith("time 100 in an hour");
    }
}
