package groundbass.audience.student;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.file;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.download.DownloadId;
import groundbass.audience.download.Requester;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class StudentsTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void leavingTakesThePersonOutAndLeavesTheCount(Database database) {
        try (database) {
            var audience = new Audience(database);
            var anna =
                    (SignedIn.As) audience.signIns.use(audience.requested(ANNA), Agreements.to("1"), Device.COMPUTER);
            var bert =
                    (SignedIn.As) audience.signIns.use(audience.requested(BERT), Agreements.to("1"), Device.COMPUTER);
            DownloadId taken = audience.take(file(FIRST, "sheet.pdf", 10), new Requester.Known(anna.student()));

            audience.students.forget(anna.student());
            audience.students.forget(anna.student());

            assertThat(audience.students.find(anna.student())).isEmpty();
            assertThat(audience.sessions.find(anna.token())).isEmpty();
            assertThat(audience.download(taken).student()).isEmpty();
            assertThat(audience.statistics.ofEpisode(FIRST).anonymous()).isEqualTo(1);
            for (String table : new String[] {"student", "session", "consent", "sign_in", "outbox", "audit"}) {
                assertThat(audience.contents(table))
                        .doesNotContain(ANNA.value(), anna.student().value());
            }
            assertThat(audience.rows("audit")).isEqualTo(1);
            assertThat(audience.sessions.find(bert.token())).isPresent();
            assertThat(audience.outbox.newest(10)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aStudentChoosesALanguage(Database database) {
        try (database) {
            var audience = new Audience(database);
            StudentId anna = audience.student(ANNA);
            audience.students.speak(anna, Locale.GERMAN);
            assertThat(audience.students.find(anna)).map(Student::locale).contains(Locale.GERMAN);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void consentsAreAddedAndClosedNeverRewritten(Database database) {
        try (database) {
            var audience = new Audience(database);
            StudentId anna = audience.student(ANNA);
            audience.consents.give(anna, Purpose.LETTERS, "1");
            audience.consents.give(anna, Purpose.LETTERS, "1");
            audience.clock.advance(Duration.ofDays(1));
            audience.consents.withdraw(anna, Purpose.LETTERS);
            audience.consents.withdraw(anna, Purpose.LETTERS);
            audience.clock.advance(Duration.ofDays(1));
            audience.consents.give(anna, Purpose.LETTERS, "2");

            assertThat(audience.consents.of(anna))
                    .extracting(consent -> consent.wording() + " " + consent.givenAt() + " " + consent.withdrawnAt())
                    .containsExactly(
                            "1 2026-03-02T10:00:00Z Optional[2026-03-03T10:00:00Z]",
                            "2 2026-03-04T10:00:00Z Optional.empty");
        }
    }
}
