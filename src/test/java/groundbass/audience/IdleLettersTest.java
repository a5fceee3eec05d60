package groundbass.audience;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.student.Device;
import groundbass.audience.student.IdleStudents;
import groundbass.audience.student.Person;
import groundbass.catalog.settings.AccountRules;
import groundbass.post.Delivery;
import groundbass.post.EmailAddress;
import groundbass.post.Postman;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/**
 * What becomes of an account where the letter that announces its end takes one way or another, by the pass that also clears
 * old letters away. From the second of March 2026, 10 o'clock, twelve months are 365 days and 24 are 731. A year (two years)
 * and 30 days after the 31st of January, the 335th and the 700th day, that second of March is reached.
 */
class IdleLettersTest {
    private static final Duration DAY = Duration.ofDays(1);

    private static AccountRules after(int months) {
        return new AccountRules(Optional.of(months), Optional.empty());
    }

    /** Whoever is named after a way takes it. */
    private static EmailAddress reader(Delivery way) {
        return new EmailAddress(way.name().toLowerCase(Locale.ROOT) + "@example.org");
    }

    private static Delivery way(EmailAddress reader) {
        return Stream.of(Delivery.values())
                .filter(way -> reader(way).equals(reader))
                .findFirst()
                .orElse(Delivery.SENT);
    }

    private static void deliver(Audience audience) {
        new Postman(audience.database.jdbi(), (id, mail) -> way(mail.to()), audience.clock, Runnable::run).deliverDue();
    }

    /** A day: letters are taken along, then all is tidied. */
    private static void aDay(Audience audience, Housekeeping tidy) {
        audience.clock.advance(DAY);
        deliver(audience);
        tidy.tidy();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anAccountEndsOnlyWhereItsLetterLeft(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var tidy = HousekeepingTest.tidy(audience);
            List.of(Delivery.values()).forEach(way -> audience.student(reader(way)));
            audience.clock.advance(Duration.ofDays(335));
            tidy.tidy();
            Instant told = audience.clock.instant();
            for (int day = 0; day < 70; day++) {
                aDay(audience, tidy);
            }
            for (Delivery way : Delivery.values()) {
                boolean stays = way != Delivery.SENT;
                assertThat(audience.students.find(reader(way)).isPresent())
                        .as(way.value())
                        .isEqualTo(stays);
                if (stays) {
                    assertThat(audience.outbox.to(reader(way)))
                            .as("told anew, once a month: " + way.value())
                            .hasSize(1)
                            .allMatch(letter -> letter.createdAt().isAfter(told.plus(Duration.ofDays(59))));
                }
            }
            assertThat(audience.audit.latest(9))
                    .extracting(entry -> entry.who() + ": " + entry.what())
                    .contains("calendar: account.ended")
                    .doesNotContain("a student: account deleted");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theMonthCountsFromWhenTheLetterLeft(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var tidy = HousekeepingTest.tidy(audience);
            audience.student(ANNA);
            audience.clock.advance(Duration.ofDays(335));
            tidy.tidy();
            audience.clock.advance(Duration.ofDays(45));
            tidy.tidy();
            assertThat(audience.outbox.to(ANNA)).as("it waits still").hasSize(1);
            aDay(audience, tidy);
            audience.clock.advance(Duration.ofDays(29));
            tidy.tidy();
            assertThat(audience.students.find(ANNA)).isPresent();
            audience.clock.advance(DAY);
            tidy.tidy();
            assertThat(audience.students.find(ANNA)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoWasToldUnderAShorterRuleIsToldAnewUnderTheLongerOne(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var tidy = HousekeepingTest.tidy(audience);
            audience.student(ANNA);
            audience.clock.advance(Duration.ofDays(335));
            tidy.tidy();
            aDay(audience, tidy);
            audience.rules = after(24);
            tidy.tidy();
            audience.clock.advance(Duration.ofDays(363)); // day 699
            tidy.tidy();
            assertThat(audience.outbox.to(ANNA)).isEmpty();
            audience.clock.advance(DAY);
            tidy.tidy();
            assertThat(audience.outbox.to(ANNA)).hasSize(1);
            aDay(audience, tidy); // left, and seen, on day 701
            audience.clock.advance(Duration.ofDays(29));
            tidy.tidy();
            assertThat(audience.students.find(ANNA)).isPresent();
            audience.clock.advance(DAY);
            tidy.tidy();
            assertThat(audience.students.find(ANNA)).isEmpty();
        }
    }

    /** Between finding that an account ends and ending it somebody may sign in. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whetherItIsStillSoIsAskedOnceMore(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.rules = after(12);
            var anna = audience.student(ANNA);
            audience.clock.advance(Duration.ofDays(335));
            audience.idle.pass();
            deliver(audience);
            audience.idle.pass();
            audience.clock.advance(Duration.ofDays(30));
            Instant now = audience.clock.instant();
            Instant year = now.minus(Duration.ofDays(365));
            Instant month = now.minus(Duration.ofDays(30));
            var students = new IdleStudents(database.jdbi());
            assertThat(students.ended(year, month, 1)).containsExactly(anna);
            boolean before = database.jdbi().inTransaction(handle -> IdleStudents.hasEnded(handle, anna, year, month));
            audience.sessions.open(new Person.OfStudent(anna), Device.COMPUTER);
            boolean after = database.jdbi().inTransaction(handle -> IdleStudents.hasEnded(handle, anna, year, month));
            assertThat(List.of(before, after)).containsExactly(true, false);
        }
    }

    /** A year before the 29th of February begins on the 28th once more, so that what was due is not due for some hours. */
    @Test
    void nobodyIsToldTwiceWhereAMonthIsShort() {
        try (var database = BothDatabases.freshH2()) {
            var audience = new Audience(database);
            audience.rules = after(12);
            audience.clock.set("2027-03-30T12:00:00Z");
            audience.student(ANNA);
            for (String at : List.of("2028-02-28T23:00:00Z", "2028-02-29T01:00:00Z", "2028-02-29T23:00:00Z")) {
                audience.clock.set(at);
                audience.idle.pass();
                assertThat(audience.outbox.to(ANNA)).as(at).hasSize(1);
            }
        }
    }

    @Test
    void theLetterSaysThatTheNewsEndToo() {
        try (var database = BothDatabases.freshH2()) {
            var audience = new Audience(database);
            audience.rules = after(12);
            audience.student(ANNA);
            database.jdbi().useTransaction(handle -> audience.students.create(handle, BERT, Locale.GERMAN));
            audience.clock.advance(Duration.ofDays(335));
            audience.idle.pass();
            assertThat(audience.outbox.to(ANNA).get(0).message().text()).contains("e-mails about new lessons");
            assertThat(audience.outbox.to(BERT).get(0).message().text()).contains("E-Mails über neue Lektionen");
        }
    }
}
