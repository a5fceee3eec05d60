package groundbass.audience;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.VISITOR;
import static groundbass.audience.Audience.file;
import static groundbass.audience.Audience.whole;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.DownloadId;
import groundbass.audience.download.DownloadState;
import groundbass.audience.student.Agreements;
import groundbass.audience.student.Device;
import groundbass.audience.student.SignedIn;
import groundbass.audience.student.Tries;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.post.DevelopmentSender;
import groundbass.post.EmailAddress;
import groundbass.post.Postman;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class HousekeepingTest {
    static Housekeeping tidy(Audience audience) {
        var jdbi = audience.database.jdbi();
        return new Housekeeping(
                audience.downloads,
                audience.signIns,
                audience.access,
                audience.previews,
                audience.sessions,
                audience.outbox,
                audience.audit,
                new Tries(jdbi, audience.clock),
                audience.newsReaders,
                audience.invitations,
                new ProgramTokens(jdbi, audience.audit, audience.clock),
                new ProgramAnswers(jdbi, audience.clock),
                audience.idle);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void keepsWhatIsCountedAndNothingOfWhoNeverCameBack(Database database) {
        try (database) {
            var audience = new Audience(database);
            var tidy = tidy(audience);
            var anna =
                    (SignedIn.As) audience.signIns.use(audience.requested(ANNA), Agreements.to("1"), Device.COMPUTER);
            new Postman(database.jdbi(), new DevelopmentSender(), audience.clock, Runnable::run).deliverDue();
            DownloadId id = audience.downloads
                    .begin(whole(file(FIRST, "sheet.pdf", 10), VISITOR))
                    .id();

            tidy.tidy();
            assertThat(audience.rows("sign_in") + audience.rows("session") + audience.rows("outbox"))
                    .isEqualTo(3);
            audience.clock.advance(Duration.ofDays(31));
            tidy.tidy();
            tidy.tidy();

            assertThat(audience.rows("sign_in") + audience.rows("session") + audience.rows("outbox"))
                    .isZero();
            assertThat(audience.students.find(anna.student())).isPresent();
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.BROKEN_OFF);
        }
    }

    /** What is no longer needed for its purpose goes: Regulation (EU) 2016/679, article 5 paragraph 1 (e). */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void thatAnAddressWasRefusedIsKeptOfThoseAloneWhoAreAtHomeHere(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.student(ANNA);
            refuse(audience, ANNA);
            refuse(audience, BERT);
            audience.clock.advance(Duration.ofDays(29));
            tidy(audience).tidy();
            assertThat(audience.rows("refused_address")).isEqualTo(2);
            audience.clock.advance(Duration.ofDays(2));
            tidy(audience).tidy();
            assertThat(audience.contents("refused_address"))
                    .contains(ANNA.value())
                    .doesNotContain(BERT.value());
        }
    }

    private static void refuse(Audience audience, EmailAddress reader) {
        audience.database
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "insert into refused_address (email, refused_at, reply) values (?, ?, ?)",
                        reader,
                        audience.clock.instant(),
                        "550 no such user"));
    }
}
