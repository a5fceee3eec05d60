package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.identity.Sha256;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Tokens of programs and what these were answered, as rows. */
class ProgramTokensTest {
    private static final Set<ProgramScope> ALL = EnumSet.allOf(ProgramScope.class);

    private final SettableClock clock = SettableClock.at("2026-03-02T10:00:00Z");

    private ProgramTokens tokens(Database database) {
        return new ProgramTokens(database.jdbi(), new Audit(database.jdbi(), clock), clock);
    }

    private EducatorId educator(Database database, String email) {
        var jdbi = database.jdbi();
        return new Educators(jdbi, new Audit(jdbi, clock), clock)
                .create("A. Teacher", email, "a password for trials")
                .result()
                .orElseThrow()
                .id();
    }

    private static ProgramSecret made(ProgramTokens tokens, EducatorId who, String name) {
        return tokens.make(who, name, ALL, 30).result().orElseThrow();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aTokenIsToldOnceAndKeptAsADigest(Database database) {
        try (database) {
            var tokens = tokens(database);
            var who = educator(database, "a@trial.example");
            var secret = made(tokens, who, " Week ");
            assertThat(secret.toString()).doesNotContain(secret.value());
            var row = database.jdbi().withHandle(handle -> handle.createQuery("select * from program_token")
                    .mapToMap()
                    .one());
            assertThat(row.values().toString()).doesNotContain(secret.value());
            // FIPS 180-4
            assertThat(row.get("token_hash"))
                    .isEqualTo(Sha256.of(secret.value().getBytes(StandardCharsets.UTF_8))
                            .hex());
            var found = tokens.find(secret).orElseThrow();
            assertThat(found.name()).isEqualTo("Week");
            assertThat(found.scopes()).isEqualTo(ALL);
            assertThat(tokens.find(ProgramSecret.next())).isEmpty();
            assertThat(new Audit(database.jdbi(), clock).latest(10))
                    .extracting(AuditEntry::what)
                    .contains("token.created");
            assertThat(new Audit(database.jdbi(), clock).latest(10).toString()).doesNotContain(secret.value());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void itsUseIsNotedToTheMinuteAndItEndsByItself(Database database) {
        try (database) {
            var tokens = tokens(database);
            var who = educator(database, "a@trial.example");
            var secret = made(tokens, who, "Week");
            assertThat(tokens.of(who).get(0).usedAt()).isEmpty();
            var first = clock.instant();
            tokens.find(secret);
            clock.advance(Duration.ofSeconds(59));
            tokens.find(secret);
            assertThat(tokens.of(who).get(0).usedAt()).isEqualTo(Optional.of(first));
            clock.advance(Duration.ofSeconds(1));
            tokens.find(secret);
            assertThat(tokens.of(who).get(0).usedAt()).isEqualTo(Optional.of(clock.instant()));

            clock.advance(Duration.ofDays(30));
            assertThat(tokens.find(secret)).isEmpty();
            assertThat(tokens.of(who).get(0).isOver(clock.instant())).isTrue();
            assertThat(tokens.purge()).isZero();
            clock.advance(Duration.ofDays(30));
            assertThat(tokens.purge()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneWithdrawsOnesOwnAndHasNoMoreThanSome(Database database) {
        try (database) {
            var tokens = tokens(database);
            var who = educator(database, "a@trial.example");
            var other = educator(database, "b@trial.example");
            var secret = made(tokens, who, "Week");
            String id = tokens.of(who).get(0).id();
            tokens.withdraw(other, id);
            assertThat(tokens.find(secret)).isPresent();
            tokens.withdraw(who, id);
            assertThat(tokens.find(secret)).isEmpty();

            for (int i = 0; i < ProgramTokens.MOST; i++) {
                made(tokens, who, "Program " + i);
            }
            assertThat(tokens.make(who, "One more", ALL, 30).problems()).hasSize(1);
            assertThat(tokens.make(other, "", Set.of(), 31).problems()).hasSize(3);
            made(tokens, other, "Theirs");
            tokens.withdrawAll(who);
            assertThat(tokens.of(who)).isEmpty();
            assertThat(tokens.of(other)).hasSize(1);
        }
    }

    /** IETF draft httpapi-idempotency-key-header, section 2.6; a day and five minutes are ours. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWasAnsweredIsKnownForADay(Database database) {
        try (database) {
            var tokens = tokens(database);
            var who = educator(database, "a@trial.example");
            var token = tokens.find(made(tokens, who, "Week")).orElseThrow();
            var another = tokens.find(made(tokens, who, "Other")).orElseThrow();
            var answers = new ProgramAnswers(database.jdbi(), clock);
            var asked = Sha256.of(new byte[] {1});
            var answer = new ProgramAnswer(201, "application/json", Optional.of("/somewhere"), "{}");

            var first = (Repetition.First) answers.begin(token, "k", asked);
            assertThat(answers.begin(token, "k", asked)).isInstanceOf(Repetition.UnderWay.class);
            assertThat(answers.begin(another, "k", asked)).isInstanceOf(Repetition.First.class);
            answers.keep(first, answer);
            assertThat(answers.begin(token, "k", asked)).isEqualTo(new Repetition.Answered(answer));
            assertThat(answers.begin(token, "k", Sha256.of(new byte[] {2}))).isInstanceOf(Repetition.Otherwise.class);
            clock.advance(ProgramAnswers.BROKEN_OFF);
            assertThat(answers.begin(token, "k", asked)).isEqualTo(new Repetition.Answered(answer));
            var anew = answers.begin(another, "k", asked);
            assertThat(anew).as("whoever was killed meanwhile may do it anew").isInstanceOf(Repetition.First.class);
            answers.forget((Repetition.First) anew);
            assertThat(answers.begin(another, "k", asked)).isInstanceOf(Repetition.First.class);
            clock.advance(ProgramAnswers.KEPT);
            assertThat(answers.begin(token, "k", asked)).isInstanceOf(Repetition.First.class);
            assertThat(answers.purge()).isEqualTo(1);
        }
    }

    /** In two windows at once. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void twoWindowsMakeNoMoreThanOneMay(Database database) throws Exception {
        try (database) {
            var tokens = tokens(database);
            for (int round = 0; round < 5; round++) {
                var who = educator(database, round + "@trial.example");
                for (int i = 1; i < ProgramTokens.MOST; i++) {
                    made(tokens, who, "Program " + i);
                }
                AtOnce.twice(() -> tokens.make(who, "One more", ALL, 30));
                assertThat(tokens.of(who)).hasSize(ProgramTokens.MOST);
            }
        }
    }
}
