package groundbass.audience.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.form.FieldProblem;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;

class EducatorAccessTest {
    private static final String EMAIL = "a.teacher@example.org";
    private static final String OLD = "low tide at seven";
    private static final String NEW = "quartz lantern boat seven";

    private static Educator educator(Audience audience) {
        return audience.educators.create("A. Teacher", EMAIL, OLD).result().orElseThrow();
    }

    private static SecretToken asked(Audience audience) {
        audience.access.forgotten(" A.Teacher@Example.org ", Locale.ENGLISH);
        audience.clock.advance(Duration.ofMillis(1));
        String text = audience.outbox.newest(1).get(0).message().text();
        String link = text.lines()
                .filter(line -> line.startsWith("https://bass.example:8443/desk/reset/"))
                .findFirst()
                .orElseThrow();
        return new SecretToken(link.substring(link.lastIndexOf('/') + 1));
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aMailedLinkSetsANewPasswordOnceAndEndsAllSessions(Database database) {
        try (database) {
            var audience = new Audience(database);
            var educator = educator(audience);
            var open = audience.sessions.open(new Person.OfEducator(educator.id()), Device.PHONE);
            SecretToken earlier = asked(audience);
            SecretToken link = asked(audience);
            assertThat(audience.access.isValid(link)).isTrue();
            assertThat(audience.access.isValid(link))
                    .as("looking does not use it up")
                    .isTrue();

            var refused = audience.access.reset(link, "qwertyuiopas", Locale.ENGLISH);
            assertThat(refused.orElseThrow().problems())
                    .containsExactly(FieldProblem.of("chosen", "catalog.problem.password.common"));
            assertThat(audience.sessions.find(open)).isPresent();

            assertThat(audience.access
                            .reset(link, NEW, Locale.ENGLISH)
                            .orElseThrow()
                            .result())
                    .isPresent();
            assertThat(audience.educators.verify(EMAIL, NEW)).isPresent();
            assertThat(audience.educators.verify(EMAIL, OLD)).isEmpty();
            assertThat(audience.sessions.find(open)).isEmpty();
            for (SecretToken used : List.of(link, earlier)) {
                assertThat(audience.access.isValid(used)).isFalse();
                assertThat(audience.access.reset(used, OLD, Locale.ENGLISH)).isEmpty();
            }
            assertThat(audience.outbox.newest(1).get(0).message().subject())
                    .isEqualTo("Your password for Quay Lessons was changed");
            assertThat(audience.audit.latest(10))
                    .extracting(AuditEntry::what)
                    .contains("password.reset", "password.forgotten");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkLastsHalfAnHour(Database database) {
        try (database) {
            var audience = new Audience(database);
            educator(audience);
            SecretToken link = asked(audience);
            audience.clock.advance(EducatorAccess.VALID.minusSeconds(1));
            assertThat(audience.access.isValid(link)).isTrue();
            audience.clock.advance(Duration.ofSeconds(1));
            assertThat(audience.access.isValid(link)).isFalse();
            assertThat(audience.access.reset(link, NEW, Locale.ENGLISH)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anUnknownAddressLeavesARowThatTellsNothingAndGetsNoLetter(Database database) {
        try (database) {
            var audience = new Audience(database);
            educator(audience);
            audience.access.forgotten("stranger@example.org", Locale.ENGLISH);
            assertThat(audience.outbox.newest(10)).isEmpty();
            String kept = database.jdbi().withHandle(handle -> handle.createQuery("select * from password_reset")
                    .mapToMap()
                    .list()
                    .toString());
            assertThat(kept).contains("token_hash").doesNotContain("stranger");
            audience.clock.advance(Duration.ofHours(25));
            assertThat(audience.access.purge()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void threeLinksAnHourAreSent(Database database) {
        try (database) {
            var audience = new Audience(database);
            educator(audience);
            for (int i = 0; i < 5; i++) audience.access.forgotten(EMAIL, Locale.ENGLISH);
            assertThat(audience.outbox.newest(10)).hasSize(EducatorAccess.MOST_PER_HOUR);
            audience.clock.advance(Duration.ofHours(1).plusSeconds(1));
            audience.access.forgotten(EMAIL, Locale.ENGLISH);
            assertThat(audience.outbox.newest(10)).hasSize(EducatorAccess.MOST_PER_HOUR + 1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theDatabaseHoldsTheHashAlone(Database database) {
        try (database) {
            var audience = new Audience(database);
            educator(audience);
            SecretToken link = asked(audience);
            var kept = database.jdbi().withHandle(handle -> handle.createQuery("select token_hash from password_reset")
                    .mapTo(String.class)
                    .one());
            assertThat(kept).isEqualTo(link.hash()).isNotEqualTo(link.value());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void signInsAreForgottenAfterNinetyDaysAndNothingElseIs(Database database) {
        try (database) {
            var audience = new Audience(database);
            educator(audience);
            audience.audit.note(Audit.STRANGER, AuditWord.SIGN_IN_REFUSED, "");
            audience.audit.note(Audit.STUDENT, AuditWord.SIGN_IN_DONE, "");
            audience.audit.note(Audit.STRANGER, AuditWord.ENTRY_REFUSED, "");
            audience.audit.note(Audit.STRANGER, AuditWord.PRESENT_REFUSED, "");
            audience.clock.advance(Audit.SIGN_INS_KEPT.plusSeconds(1));
            assertThat(audience.audit.purgeSignIns()).isEqualTo(4);
            assertThat(audience.audit.latest(10)).extracting(AuditEntry::what).containsExactly("educator.created");
        }
    }

    /** Forms of the header as RFC 9110 section 10.1.5 and the makers of browsers write it; from memory. */
    @ParameterizedTest
    @CsvSource({
        "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36, COMPUTER",
        "Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 Mobile Safari/537.36, PHONE",
        "Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 Safari/537.36, TABLET",
        "Mozilla/5.0 (Android 14; Tablet; rv:120.0) Gecko/120.0, TABLET",
        "fetcher/1.0, PROGRAM"
    })
    void aDeviceIsKnownByWhatItSaysOfItself(String header, Device device) {
        assertThat(Device.of(header)).isEqualTo(device);
    }

    @Test
    void aDeviceThatSaysNothingIsUnknown() {
        assertThat(Device.of("")).isEqualTo(Device.UNKNOWN);
    }
}
