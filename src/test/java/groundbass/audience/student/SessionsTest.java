package groundbass.audience.student;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.audience.Audience;
import groundbass.catalog.educator.EducatorId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class SessionsTest {
    private static final Person EDUCATOR = new Person.OfEducator(new EducatorId("educator00000001"));

    /** OWASP ASVS 5.0, 7.1.1. */
    @Test
    void thePageForOperatorsSaysHowLongTheyLast() throws IOException {
        var desk = SessionLimits.of(EDUCATOR);
        var student = SessionLimits.of(new Person.OfStudent(StudentId.next()));
        assertThat(Files.readString(Path.of("src/main/docs/security.md")))
                .contains("| at a desk | " + desk.idle().toHours() + " hours | "
                        + desk.longest().toDays() + " days |")
                .contains("| student | " + student.idle().toDays() + " days | "
                        + student.longest().toDays() + " days |");
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aStudentStaysSignedInForThirtyIdleDays(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken token = audience.sessions.open(new Person.OfStudent(audience.student(ANNA)), Device.COMPUTER);
            audience.clock.advance(Duration.ofDays(30).minusMillis(1));
            assertThat(audience.sessions.find(token)).isPresent();
            audience.clock.advance(Duration.ofDays(30).minusMillis(1));
            assertThat(audience.sessions.find(token)).isPresent();
            audience.clock.advance(Duration.ofDays(30));
            assertThat(audience.sessions.find(token)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEducatorStaysSignedInForTwelveIdleHoursAndAWeekAtMost(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken token = audience.sessions.open(EDUCATOR, Device.COMPUTER);
            for (int half = 1; half < 7 * 24 / 11; half++) {
                audience.clock.advance(Duration.ofHours(11));
                assertThat(audience.sessions.find(token)).map(Session::person).contains(EDUCATOR);
            }
            audience.clock.set("2026-03-09T10:00:00Z");
            assertThat(audience.sessions.find(token)).isEmpty();

            SecretToken idle = audience.sessions.open(EDUCATOR, Device.COMPUTER);
            audience.clock.advance(Duration.ofHours(12));
            assertThat(audience.sessions.find(idle)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void signingOutEndsOneSessionOrAllOfAPerson(Database database) {
        try (database) {
            var audience = new Audience(database);
            var anna = new Person.OfStudent(audience.student(ANNA));
            var bert = new Person.OfStudent(audience.student(BERT));
            SecretToken phone = audience.sessions.open(anna, Device.PHONE);
            SecretToken desk = audience.sessions.open(anna, Device.PHONE);
            SecretToken others = audience.sessions.open(bert, Device.PHONE);
            SecretToken educators = audience.sessions.open(EDUCATOR, Device.COMPUTER);

            audience.sessions.close(phone);
            assertThat(audience.sessions.find(phone)).isEmpty();
            assertThat(audience.sessions.find(desk)).isPresent();
            assertThat(audience.sessions.closeAll(anna)).isEqualTo(1);
            assertThat(audience.sessions.find(desk)).isEmpty();
            assertThat(audience.sessions.find(others)).isPresent();
            assertThat(audience.sessions.find(educators)).isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void endedSessionsAreDeleted(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.sessions.open(EDUCATOR, Device.COMPUTER);
            SecretToken student = audience.sessions.open(new Person.OfStudent(audience.student(ANNA)), Device.COMPUTER);
            audience.clock.advance(Duration.ofHours(12));
            assertThat(audience.sessions.purge()).isEqualTo(1);
            assertThat(audience.sessions.find(student)).isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theDatabaseRefusesASessionOfNobodyOrOfTwo(Database database) {
        try (database) {
            var audience = new Audience(database);
            String student = audience.student(ANNA).value();
            for (String owners : new String[] {"null, null", "'" + student + "', 'educator00000001'"}) {
                assertThatThrownBy(() -> database.jdbi().useHandle(handle -> handle.execute("""
                                insert into session (token_hash, student_id, educator_id, created_at, seen_at, expires_at)
                                values ('x', %s, now(), now(), now())""".formatted(owners))))
                        .isInstanceOf(UnableToExecuteStatementException.class);
            }
        }
    }
}
