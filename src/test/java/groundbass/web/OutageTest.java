package groundbass.web;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import groundbass.web.shell.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.time.Duration;
import org.jdbi.v3.core.ConnectionException;
import org.junit.jupiter.api.Test;

/** What is out of order for a while is said to be so, by the health page and by all others. */
class OutageTest {
    @Test
    void theHealthPageSeesAFolderThatCannotBeWritten() throws IOException {
        try (var site = Site.open()) {
            site.program()
                    .get("/healthz")
                    .then()
                    .statusCode(200)
                    .body("status", equalTo("ok"), "database", equalTo("ok"), "files", equalTo("ok"));
            Path incoming = site.data().resolve("files").resolve("incoming");
            Files.delete(incoming);
            site.clock().advance(Duration.ofSeconds(10));
            site.program()
                    .get("/healthz")
                    .then()
                    .statusCode(503)
                    .body("status", equalTo("failing"), "database", equalTo("ok"), "files", equalTo("failing"));
            Files.createDirectories(incoming);
        }
    }

    @Test
    void theHealthPageSeesADatabaseThatCannotBeWritten() {
        try (var site = Site.open()) {
            site.groundbass().database().jdbi().useHandle(handle -> handle.execute("drop table pulse"));
            site.clock().advance(Duration.ofSeconds(10));
            site.program()
                    .get("/healthz")
                    .then()
                    .statusCode(503)
                    .body("database", equalTo("failing"), "files", equalTo("ok"));
        }
    }

    @Test
    void aDatabaseThatIsAwayIsNotOurFault() {
        // the pool's timeout; SQLSTATE 57P01 "admin shutdown": PostgreSQL manual, appendix A
        for (var away : new SQLException[] {
            new SQLTransientConnectionException("request timed out"),
            new SQLException("terminating connection", "57P01")
        }) {
            assertOutage(new ConnectionException(away), "10");
        }
    }

    @Test
    void aFileThatIsBeingMadeAgainIsNotOurFaultEither() {
        assertOutage(new NoSuchFileException("a digest"), "60");
    }

    private static void assertOutage(Exception thrown, String retryAfter) {
        try (var stage = Stage.with(routes -> routes.get("/trial", Role.ANYONE, ctx -> {
            throw thrown;
        }))) {
            stage.request()
                    .accept("text/html")
                    .get("/trial")
                    .then()
                    .statusCode(503)
                    .header("Retry-After", retryAfter)
                    .body(containsString("try again"));
        }
    }
}
