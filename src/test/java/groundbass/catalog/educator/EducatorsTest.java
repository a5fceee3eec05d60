package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.form.FieldProblem;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;

class EducatorsTest {
    private static final String PASSWORD = "low tide at seven";
    private static final Clock CLOCK = SettableClock.at("2030-03-01T12:00:00Z");

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theCodeOfTheFirstRunMakesOneEducatorOnce(Database database) {
        try (database) {
            var educators = educators(database);
            String code = educators.firstRun().orElseThrow();
            var made = educators
                    .setUp(code, "Studio", " Studio@Example.ORG ", PASSWORD)
                    .result()
                    .orElseThrow();
            assertThat(made.email()).isEqualTo("studio@example.org");
            assertThat(educators.owner()).contains(made);
            assertThat(educators.find(made.id())).contains(made);
            assertThat(educators
                            .setUp(code, "Other", "other@example.org", PASSWORD)
                            .problems())
                    .containsExactly(FieldProblem.of("code", "catalog.problem.code"));
            assertThat(educators.firstRun()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyTheLatestCodeWorksAndItIsNotInTheDatabase(Database database) {
        try (database) {
            var educators = educators(database);
            String old = educators.firstRun().orElseThrow();
            String code = educators.firstRun().orElseThrow();
            String kept = database.jdbi().withHandle(h -> h.select("select code_hash from setup_code")
                    .mapTo(String.class)
                    .one());
            assertThat(kept).doesNotContain(code).hasSize(64);
            assertThat(educators.setUp(old, "Studio", "a@example.org", PASSWORD).problems())
                    .hasSize(1);
            assertThat(educators
                            .setUp(code, "Studio", "a@example.org", PASSWORD)
                            .result())
                    .isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void faultsOfTheFormAreToldTogetherAndDoNotUseTheCodeUp(Database database) {
        try (database) {
            var educators = educators(database);
            String code = educators.firstRun().orElseThrow();
            assertThat(educators.setUp(code, "", "nobody", "short").problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("name", "email", "password");
            assertThat(educators
                            .setUp(code, "Studio", "a@example.org", PASSWORD)
                            .result())
                    .isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyTheRightPasswordOfTheRightAddressIsVerified(Database database) {
        try (database) {
            var educators = educators(database);
            var made = educators.create("Studio", "a@example.org", PASSWORD).result();
            assertThat(educators.verify("A@example.org", PASSWORD)).isEqualTo(made);
            assertThat(educators.verify("a@example.org", PASSWORD + " ")).isEmpty();
            assertThat(educators.verify("b@example.org", PASSWORD)).isEmpty();
            assertThat(educators.create("Again", "A@example.org", PASSWORD).problems())
                    .containsExactly(FieldProblem.of("email", "catalog.problem.email.taken"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPasswordIsChangedByWhoKnowsIt(Database database) {
        try (database) {
            var educators = educators(database);
            var id = educators
                    .create("Studio", "a@example.org", PASSWORD)
                    .result()
                    .orElseThrow()
                    .id();
            assertThat(educators
                            .changePassword(id, "guessed wrong", "high tide at noon")
                            .problems())
                    .containsExactly(FieldProblem.of("present", "catalog.problem.password.wrong"));
            assertThat(educators.changePassword(id, PASSWORD, "short").problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("chosen");
            assertThat(educators
                            .changePassword(id, PASSWORD, "high tide at noon")
                            .result())
                    .isPresent();
            assertThat(educators.verify("a@example.org", PASSWORD)).isEmpty();
            assertThat(educators.verify("a@example.org", "high tide at noon")).isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theOperatorResetsAForgottenPassword(Database database) {
        try (database) {
            var educators = educators(database);
            educators.create("Studio", "a@example.org", PASSWORD);
            assertThat(educators
                            .resetPassword("b@example.org", "high tide at noon")
                            .problems())
                    .containsExactly(FieldProblem.of("email", "catalog.problem.email.unknown"));
            assertThat(educators
                            .resetPassword("a@example.org", "high tide at noon")
                            .result())
                    .isPresent();
            assertThat(educators.verify("a@example.org", "high tide at noon")).isPresent();
        }
    }

    /**
     * NIST SP 800-63B section 5.1.1.2 names what to refuse: known passwords, words of a dictionary, repeated and counted
     * characters, words of the context.
     */
    @ParameterizedTest
    @CsvSource({
        "123456789012, common",
        "qwertyuiopas, common",
        "Password1234, common",
        "passwort1234, common",
        "aaaaaaaaaaaa, pattern",
        "abcabcabcabc, pattern",
        "a.teacher@example.org, own",
        "groundbassgroundbass, own",
        "Quay Studio 1, own"
    })
    void whatIsGuessedFirstIsRefusedWithItsReason(String password, String reason) {
        try (var database = BothDatabases.freshH2()) {
            assertThat(educators(database)
                            .create("Quay Studio", "a.teacher@example.org", password)
                            .problems())
                    .containsExactly(FieldProblem.of("password", "catalog.problem.password." + reason));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nameAndAddressAreChangedByWhoKnowsThePassword(Database database) {
        try (database) {
            var educators = educators(database);
            var id = educators
                    .create("Studio", "a@example.org", PASSWORD)
                    .result()
                    .orElseThrow()
                    .id();
            educators.create("Other", "b@example.org", PASSWORD);
            assertThat(educators.change(id, "", "nobody", "guessed wrong").problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("name", "email", "known");
            assertThat(educators.change(id, "Studio", "B@example.org", PASSWORD).problems())
                    .containsExactly(FieldProblem.of("email", "catalog.problem.email.taken"));
            assertThat(educators
                            .change(id, " Quay ", "A@Quay.example", PASSWORD)
                            .result())
                    .isPresent();
            assertThat(educators
                            .verify("a@quay.example", PASSWORD)
                            .orElseThrow()
                            .name())
                    .isEqualTo("Quay");
            assertThat(educators.verify("a@example.org", PASSWORD)).isEmpty();
        }
    }

    @Test
    void digestsAreSaltedArgon2idWithTheAdvisedParameters() {
        // OWASP Password Storage Cheat Sheet: Argon2id, 19 MiB, 2 iterations, parallelism 1; PHC string format
        assertThat(Passwords.hash(PASSWORD))
                .startsWith("$argon2id$v=19$m=19456,t=2,p=1$")
                .isNotEqualTo(Passwords.hash(PASSWORD));
    }

    @Test
    void twoWritingsOfOneLetterAreOnePassword() {
        // Unicode NFKC: u with diaeresis is one code point or two
        assertThat(Passwords.matches("gru\u0308ne wellen", Passwords.hash("gr\u00FCne wellen")))
                .isTrue();
    }

    @Test
    void aForeignDigestIsReadByItsOwnParameters() {
        // RFC 9106 gives raw vectors only; this is the Argon2 reference implementation's own test (test.c, version
        // 0x13,
        // Argon2id, t=2, m=256, p=1, "password", "somesalt"); from memory
        String foreign = "$argon2id$v=19$m=256,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4";
        assertThat(Passwords.matches("password", foreign)).isTrue();
        assertThat(Passwords.matches("passwore", foreign)).isFalse();
    }

    /** Of a site that is older than its owner's row, the one who was there first. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoWasThereFirstOwnsTheSite(Database database) throws IOException {
        String migration = Files.readString(Path.of("migrations", "V28__share_series.sql"));
        String statement = migration.substring(migration.indexOf("insert into site_owner"));
        try (database) {
            var first = educators(database)
                    .create("First", "z@example.org", PASSWORD)
                    .result()
                    .orElseThrow();
            var clock = Clock.offset(CLOCK, Duration.ofDays(1));
            var later = new Educators(database.jdbi(), new Audit(database.jdbi(), clock), clock);
            var second =
                    later.create("Second", "a@example.org", PASSWORD).result().orElseThrow();
            database.jdbi().useTransaction(handle -> {
                later.setOwner(handle, second.id());
                assertThat(later.owner()).contains(second);
                handle.execute("delete from site_owner");
                handle.execute(statement.substring(0, statement.indexOf(';')));
            });
            assertThat(later.owner()).contains(first);
            assertThat(later.members())
                    .extracting(Member::standing)
                    .containsExactly(SiteStanding.OWNER, SiteStanding.TEACHER);
        }
    }

    private static Educators educators(Database database) {
        return new Educators(database.jdbi(), new Audit(database.jdbi(), CLOCK), CLOCK);
    }
}
