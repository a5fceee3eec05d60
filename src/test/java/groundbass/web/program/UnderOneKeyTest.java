package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramToken;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.educator.TrialEducators;
import groundbass.effort.Busy;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import groundbass.web.Stage;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.Role;
import groundbass.web.shell.limit.MemoryLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.restassured.response.Response;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Which requests may be done anew under their key, and which not: what may have been done is not done again. */
class UnderOneKeyTest {
    private static final Duration BROKEN_OFF = Duration.ofMinutes(5);

    private final SettableClock clock = SettableClock.at("2026-03-02T10:00:00Z");
    private final Database database = BothDatabases.freshH2();
    private final ProgramTokens tokens = new ProgramTokens(database.jdbi(), new Audit(database.jdbi(), clock), clock);
    private final ProgramToken token = token();
    private final Stage stage =
            Stage.at("http://localhost:8420", PrincipalResolver.NONE, pages -> List.of(operation(pages)));

    private Once.Work work = () -> made("/first");
    private int times;

    @AfterEach
    void close() {
        stage.close();
        database.close();
    }

    private ProgramToken token() {
        var who = TrialEducators.create(
                        database.jdbi(), clock, "A. Teacher", "a@trial.example", "a password for trials")
                .id();
        var secret = tokens.make(who, "Week", Set.of(ProgramScope.WRITE), 30)
                .result()
                .orElseThrow();
        return tokens.find(secret).orElseThrow();
    }

    private PageGroup operation(Pages pages) {
        var once = new Once(new ProgramAnswers(database.jdbi(), clock), new MemoryLimits(clock), pages);
        return routes -> routes.post("/do", Role.EXEMPT, ctx -> answer(ctx, once, pages));
    }

    private void answer(Context ctx, Once once, Pages pages) throws IOException {
        try {
            var call = new Call(ctx, token);
            once.answer(call, once.key(call), Incoming.json(ctx), () -> {
                times++;
                return work.make();
            });
        } catch (Refusal refusal) {
            refusal.headers().forEach(ctx::header);
            Door.document(refusal, pages.reader(ctx)).send(ctx);
        }
    }

    private static Once.Made made(String location) {
        return new Once.Made(HttpStatus.CREATED, location, Map.of());
    }

    private Response post() {
        return stage.request()
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", "\"k\"")
                .body("{}")
                .post("/do");
    }

    @Test
    void whatWasRefusedBeforeAnythingWasDoneIsDoneUnderTheSameKey() {
        work = () -> {
            throw new Busy(Duration.ofSeconds(1));
        };
        assertThat(post().statusCode()).isEqualTo(503);
        work = () -> {
            throw new NotFoundResponse();
        };
        assertThat(post().statusCode()).isEqualTo(404);
        work = () -> made("/first");
        assertThat(post().statusCode()).isEqualTo(201);
        assertThat(times).isEqualTo(3);
    }

    @Test
    void whatMayHaveBeenDoneBeforeAFaultIsNotDoneAgain() {
        work = () -> {
            throw new IllegalStateException("after it was written");
        };
        assertThat(post().statusCode()).isEqualTo(500);
        work = () -> made("/again");
        assertThat(post().statusCode()).isEqualTo(409);
        assertThat(times).isEqualTo(1);
        clock.advance(BROKEN_OFF);
        assertThat(post().statusCode()).isEqualTo(201);
    }

    @Test
    void whatWasDoneIsNotDoneAgainWhereItsAnswerCannotBeKept() {
        work = () -> made("/" + "x".repeat(300)); // longer than its column
        assertThat(post().statusCode()).isEqualTo(500);
        work = () -> made("/again");
        assertThat(post().statusCode()).isEqualTo(409);
        assertThat(times).isEqualTo(1);
    }

    @Test
    void aRequestThatTookTooLongLeavesTheAnswerOfItsSuccessor() {
        work = () -> {
            overtaken();
            return made("/first");
        };
        post();
        assertThat(post().header("Location")).isEqualTo("/successor");
        assertThat(times).isEqualTo(2);
    }

    @Test
    void aRequestThatTookTooLongAndIsRefusedThenLeavesTheKeyToItsSuccessor() {
        work = () -> {
            overtaken();
            throw new NotFoundResponse();
        };
        post();
        assertThat(post().header("Location")).isEqualTo("/successor");
        assertThat(times).isEqualTo(2);
    }

    /** Within the work of the first: another is sent when the first counts as broken off. */
    private void overtaken() {
        clock.advance(BROKEN_OFF);
        work = () -> made("/successor");
        assertThat(post().header("Location")).isEqualTo("/successor");
    }

    /** RFC 6750 section 3.1: invalid_token. */
    @Test
    void aTokenThatIsWithdrawnMeanwhileIsSaidToBeSo() {
        tokens.withdraw(token.educator(), token.id());
        var answer = post();
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.header("WWW-Authenticate")).contains("error=\"invalid_token\"");
        assertThat(times).isZero();
    }
}
