package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.form.FieldProblem;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.Unguessable;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;

class SecondFactorsTest {
    /** "12345678901234567890" of RFC 6238 appendix B, in the Base32 of RFC 4648. */
    private static final FactorSecret OF_THE_RFC = new FactorSecret("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ");

    private static final Duration STEP = Duration.ofSeconds(30);

    /** RFC 6238 appendix B, SHA-1; the last six of its eight digits (RFC 4226 section 5.3 takes the remainder). */
    @ParameterizedTest
    @CsvSource({"59, 287082", "1111111109, 081804", "1111111111, 050471", "1234567890, 005924", "2000000000, 279037"})
    void codesAreThoseOfTheStandard(long second, String code) {
        assertThat(StepCode.step(OF_THE_RFC, code, Instant.ofEpochSecond(second)))
                .hasValue(second / 30);
    }

    @Test
    void aClockMayBeOneStepOffAndNoMore() {
        var now = Instant.ofEpochSecond(1_111_111_111);
        assertThat(StepCode.step(OF_THE_RFC, "050471", now.plus(STEP))).isPresent();
        assertThat(StepCode.step(OF_THE_RFC, "050471", now.minus(STEP))).isPresent();
        assertThat(StepCode.step(OF_THE_RFC, "050471", now.plus(STEP.multipliedBy(2))))
                .isEmpty();
    }

    @Test
    void secretsAreNewEachTimeAndAreNotShown() {
        var one = FactorSecret.next();
        assertThat(one.bytes()).hasSize(20);
        assertThat(one.base32()).isNotEqualTo(FactorSecret.next().base32());
        assertThat(one).asString().doesNotContain(one.base32());
        assertThat(FactorSecret.parse("GEZD")).isEmpty();
        assertThat(one.address("Low & Slow", "a@b.example").toString())
                .startsWith("otpauth://totp/Low%20%26%20Slow:a%40b.example?secret=" + one.base32());
    }

    /** OWASP ASVS 5.0, 6.5.2 and 11.5.1: 112 bits for a digest without salt, 128 for what must not be guessed. */
    @Test
    void codesOnPaperCannotBeGuessed() {
        var codes = Stream.generate(Unguessable::toType).limit(500).toList();
        assertThat(codes).doesNotHaveDuplicates().allMatch(code -> code.matches("[a-z2-9]{4}( [a-z2-9]{4}){6}"));
        long letters = codes.stream()
                .flatMapToInt(String::chars)
                .filter(letter -> letter != ' ')
                .distinct()
                .count();
        double bits =
                Math.log(letters) / Math.log(2) * codes.get(0).replace(" ", "").length();
        assertThat(bits).isGreaterThanOrEqualTo(128);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void noCodeIsTakenTwice(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var factors = new SecondFactors(database.jdbi(), new Audit(database.jdbi(), fixture.clock), fixture.clock);
            var owner = fixture.owner;
            assertThat(factors.lets(owner, "")).as("nothing is set up").isTrue();

            var secret = FactorSecret.next();
            assertThat(factors.turnOn(owner, secret, "000 00").problems()).isNotEmpty();
            assertThat(factors.isOn(owner)).isFalse();
            List<String> paper =
                    factors.turnOn(owner, secret, now(secret, fixture)).result().orElseThrow();
            assertThat(factors.lets(owner, "")).isFalse();
            assertThat(factors.lets(owner, now(secret, fixture)))
                    .as("taken already")
                    .isFalse();

            fixture.clock.advance(STEP);
            String code = now(secret, fixture);
            assertThat(factors.lets(owner, code.substring(0, 3) + " " + code.substring(3)))
                    .isTrue();
            assertThat(factors.lets(owner, code)).isFalse();

            assertThat(paper).hasSize(10).doesNotHaveDuplicates();
            assertThat(factors.lets(owner, paper.get(3))).isTrue();
            assertThat(factors.lets(owner, paper.get(3))).isFalse();
            assertThat(factors.recoveryCodes(owner)).isEqualTo(9);

            assertThat(factors.turnOff(owner, Audit.OPERATOR)).isTrue();
            assertThat(factors.lets(owner, "")).isTrue();
            assertThat(factors.recoveryCodes(owner)).isZero();
        }
    }

    /** OWASP ASVS 5.0, 6.3.3. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoDemandsOneHasOneAndWhoHasNoneLacksIt(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var audit = new Audit(database.jdbi(), fixture.clock);
            var factors = new SecondFactors(database.jdbi(), audit, fixture.clock);
            // what another server of the same site knows
            var elsewhere = new SecondFactors(database.jdbi(), audit, fixture.clock).demand();
            var owner = fixture.owner;
            var other = new Educators(database.jdbi(), audit, fixture.clock)
                    .create("B. Teacher", "b@trial.example", "a password for trials")
                    .result()
                    .orElseThrow()
                    .id();

            assertThat(factors.demand().choose(owner, true).problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("catalog.problem.factor.own-first");
            assertThat(elsewhere.isOn()).isFalse();
            assertThat(elsewhere.lacks(other)).isFalse();
            assertThat(elsewhere.lacking())
                    .as("the owner, another of the fixture, and this one")
                    .isEqualTo(3);

            var secret = FactorSecret.next();
            factors.turnOn(owner, secret, now(secret, fixture)).result().orElseThrow();
            for (int again = 0; again < 2; again++) {
                assertThat(factors.demand().choose(owner, true).result()).contains(true);
            }
            assertThat(elsewhere.isOn()).isTrue();
            assertThat(elsewhere.lacks(owner)).isFalse();
            assertThat(elsewhere.lacks(other)).isTrue();
            assertThat(elsewhere.lacking()).isEqualTo(2);

            factors.turnOn(other, secret, now(secret, fixture)).result().orElseThrow();
            assertThat(elsewhere.lacks(other)).isFalse();
            factors.turnOff(owner, Audit.OPERATOR); // the phone is gone, and the operator helped
            assertThat(elsewhere.lacks(owner)).isTrue();
            assertThat(factors.demand().choose(owner, false).result()).contains(false);
            assertThat(elsewhere.lacks(owner)).isFalse();
            assertThat(audit.latest(20))
                    .extracting(AuditEntry::what)
                    .filteredOn(what -> what.startsWith("factor."))
                    .containsExactly("factor.up-to-each", "factor.off", "factor.on", "factor.demanded", "factor.on");
        }
    }

    private static String now(FactorSecret secret, CatalogFixture fixture) {
        return StepCode.of(secret, fixture.clock.instant().getEpochSecond() / 30);
    }
}
