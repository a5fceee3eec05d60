package groundbass.audience;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.StudentId;
import groundbass.catalog.settings.AccountRules;
import groundbass.post.Delivery;
import groundbass.post.Postman;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class IdleAccountsTest {
    private static final Duration DAY = Duration.ofDays(1);

    private static AccountRules after(int months) {
        return new AccountRules(Optional.of(months), Optional.empty());
    }

    private static void deliver(Audience audience) {
        new Postman(audience.database.jdbi(), (id, mail) -> Delivery.SENT, audience.clock, Runnable::run).deliverDue();
    }

    /** From the second of March, 10 o'clock, twelve months are 365 days, and 30 before them 335. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anAccountEndsAfterItsTimeAndIsToldAMonthBefore(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var anna = audience.student(ANNA);
            audience.clock.advance(Duration.ofDays(334));
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA)).isEmpty();

            audience.clock.advance(DAY);
            audience.idle.pass();
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA)).hasSize(1);
            var letter = audience.outbox.to(ANNA).get(0).message();
            assertThat(letter.subject()).isEqualTo("Your account at Quay Lessons ends on March 2, 2027");
            assertThat(letter.text()).contains("https://bass.example:8443/sign-in", "A. Teacher");

            audience.clock.advance(Duration.ofDays(30));
            audience.idle.pass();
            assertThat(audience.students.find(anna))
                    .as("its letter has not left")
                    .isPresent();
            deliver(audience);
            audience.idle.pass();
            audience.clock.advance(Duration.ofDays(29));
            audience.idle.pass();
            assertThat(audience.students.find(anna))
                    .as("it left less than a month ago")
                    .isPresent();
            audience.clock.advance(DAY);
            audience.idle.pass();
            assertThat(audience.students.find(anna)).isEmpty();
            assertThat(audience.outbox.to(ANNA)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoComesBackKeepsTheirsAndIsToldAnewTheNextTime(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var anna = audience.student(ANNA);
            audience.student(BERT);
            audience.clock.advance(Duration.ofDays(340));
            audience.idle.pass();
            deliver(audience);
            audience.idle.pass();
            var token = signIn(audience, anna);
            audience.clock.advance(Duration.ofDays(29));
            audience.sessions.find(token); // reading a page is use as well
            audience.clock.advance(DAY.multipliedBy(2));
            audience.idle.pass();
            assertThat(audience.students.find(ANNA)).isPresent();
            assertThat(audience.students.find(BERT)).isEmpty();
            audience.clock.advance(Duration.ofDays(332));
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA)).as("the letter before").hasSize(1);
            audience.clock.advance(DAY.multipliedBy(2));
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA)).as("and the next").hasSize(2);
        }
    }

    /** A letter of long ago announces nothing once the rule was off or became longer. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingEndsUnderARuleThatDoesNotHold(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.student(ANNA);
            audience.clock.advance(Duration.ofDays(4000));
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA)).as("off by default").isEmpty();
            audience.rules = after(12);
            audience.idle.pass();
            deliver(audience);
            audience.idle.pass();
            audience.clock.advance(Duration.ofDays(31));
            audience.rules = AccountRules.USUAL;
            audience.idle.pass();
            audience.rules = after(12);
            audience.idle.pass();
            assertThat(audience.students.find(ANNA)).as("told anew").isPresent();
            deliver(audience);
            audience.idle.pass();
            audience.clock.advance(Duration.ofDays(31));
            audience.rules = new AccountRules(Optional.of(120), Optional.of(16));
            audience.clock.advance(DAY);
            audience.idle.pass();
            assertThat(audience.students.find(ANNA)).isEmpty(); // 4000 days are more than ten years
        }
    }

    private static SecretToken signIn(Audience audience, StudentId student) {
        return audience.sessions.open(new Person.OfStudent(student), Device.COMPUTER);
    }
}
