package groundbass.audience.student;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.post.OutboxMail;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class SignInsTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theFirstLinkMakesTheAccountAndTheNextFindsIt(Database database) {
        try (database) {
            var audience = new Audience(database);
            var first = (SignedIn.As)
                    audience.signIns.use(audience.requested(ANNA), Agreements.to("2026-01"), Device.COMPUTER);
            var second = (SignedIn.As)
                    audience.signIns.use(audience.requested(ANNA), Agreements.to("2026-01"), Device.COMPUTER);

            assertThat(first.first()).isTrue();
            assertThat(second.first()).isFalse();
            assertThat(second.student()).isEqualTo(first.student());
            assertThat(audience.students.find(first.student()))
                    .map(Student::email)
                    .contains(ANNA);
            assertThat(audience.sessions.find(first.token()))
                    .map(Session::person)
                    .contains(new Person.OfStudent(first.student()));
            assertThat(audience.consents.of(first.student())).singleElement().satisfies(consent -> {
                assertThat(consent.purpose()).isEqualTo(Purpose.ACCOUNT);
                assertThat(consent.wording()).isEqualTo("2026-01");
            });
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkWorksOnceAndLookingDoesNotUseIt(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken token = audience.requested(ANNA);
            assertThat(audience.signIns.peek(token)).isEqualTo(LinkState.VALID);
            assertThat(audience.signIns.peek(token)).isEqualTo(LinkState.VALID);
            assertThat(audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER))
                    .isInstanceOf(SignedIn.As.class);
            assertThat(audience.signIns.peek(token)).isEqualTo(LinkState.USED);
            assertThat(audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(new SignedIn.Refused(LinkState.USED));
            assertThat(audience.rows("session")).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyTheCodeOfTheNewestLetterIsGoodAsLongAsItsLink(Database database) {
        try (database) {
            var audience = new Audience(database);
            var refused = new SignedIn.Refused(LinkState.UNKNOWN);
            SignInCode older = code(audience);
            audience.clock.advance(Duration.ofMinutes(1));
            SignInCode newer = code(audience);
            if (!older.equals(newer)) {
                assertThat(audience.signIns.use(ANNA, older, Agreements.to("1"), Device.COMPUTER))
                        .isEqualTo(refused);
            }
            assertThat(audience.signIns.use(BERT, newer, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(refused);
            assertThat(audience.signIns.use(ANNA, newer, Agreements.to("1"), Device.COMPUTER))
                    .isInstanceOf(SignedIn.As.class);
            assertThat(audience.signIns.use(ANNA, newer, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(refused);
            audience.clock.advance(Duration.ofMinutes(1));
            SignInCode late = code(audience);
            audience.clock.advance(SignIns.VALID);
            assertThat(audience.signIns.use(ANNA, late, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(refused);
        }
    }

    /** The code of the letter that is written now. */
    private static SignInCode code(Audience audience) {
        audience.signIns.request(ANNA, Locale.ENGLISH);
        var text = audience.outbox.newest(1).get(0).message().text();
        var found = Pattern.compile("\\b\\d{6}\\b").matcher(text);
        assertThat(found.find()).isTrue();
        return SignInCode.read(found.group()).orElseThrow();
    }

    /** Who asked twice and opened one letter has no use for the other; it would lie in the mailbox and sign somebody in. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void usingALinkUsesUpTheOthersOfItsReader(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken older = audience.requested(ANNA);
            SecretToken newer = audience.requested(ANNA);
            assertThat(audience.signIns.use(newer, Agreements.to("1"), Device.COMPUTER))
                    .isInstanceOf(SignedIn.As.class);
            assertThat(audience.signIns.peek(older)).isEqualTo(LinkState.USED);
            assertThat(audience.signIns.use(older, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(new SignedIn.Refused(LinkState.USED));
            SecretToken later = audience.requested(ANNA);
            assertThat(audience.signIns.use(later, Agreements.to("1"), Device.COMPUTER))
                    .isInstanceOf(SignedIn.As.class);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkEndsAfterTwentyMinutes(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.signIns.request(ANNA, Locale.ENGLISH);
            SecretToken token = audience.mailed();
            audience.clock.advance(Duration.ofMinutes(20).minusMillis(1));
            assertThat(audience.signIns.peek(token)).isEqualTo(LinkState.VALID);
            audience.clock.advance(Duration.ofMillis(1));
            assertThat(audience.signIns.peek(token)).isEqualTo(LinkState.EXPIRED);
            assertThat(audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER))
                    .isEqualTo(new SignedIn.Refused(LinkState.EXPIRED));
            assertThat(audience.rows("student")).isZero();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aMadeUpLinkIsUnknown(Database database) {
        try (database) {
            var audience = new Audience(database);
            for (String made : List.of("", "x", "' or 1=1 --", "é".repeat(5000))) {
                assertThat(audience.signIns.peek(new SecretToken(made))).isEqualTo(LinkState.UNKNOWN);
                assertThat(audience.signIns.use(new SecretToken(made), Agreements.to("1"), Device.COMPUTER))
                        .isEqualTo(new SignedIn.Refused(LinkState.UNKNOWN));
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void linksBeginWithTheAddressThatTheEducatorChoseLast(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.publicAddress = URI.create("https://grooves.example");
            audience.signIns.request(ANNA, Locale.ENGLISH);
            var letter = audience.outbox.newest(1).get(0).message();
            assertThat(letter.subject()).isEqualTo("Your sign-in link for Quay Lessons");
            assertThat(letter.text()).contains("https://grooves.example/sign-in/");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void knownAndUnknownAddressesLeaveTheSameTraces(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.student(ANNA);
            audience.signIns.request(ANNA, Locale.ENGLISH);
            audience.signIns.request(BERT, Locale.ENGLISH);
            assertThat(audience.outbox.newest(10))
                    .extracting(letter -> letter.message().subject())
                    .containsExactly("Your sign-in link for Quay Lessons", "Your sign-in link for Quay Lessons");
            assertThat(audience.rows("sign_in")).isEqualTo(2);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anAddressGetsFiveLinksAnHour(Database database) {
        try (database) {
            var audience = new Audience(database);
            for (int i = 0; i < 7; i++) audience.signIns.request(ANNA, Locale.ENGLISH);
            audience.signIns.request(BERT, Locale.ENGLISH);
            assertThat(audience.outbox.newest(100))
                    .filteredOn(letter -> isTo(letter, ANNA.value()))
                    .hasSize(5);
            assertThat(audience.outbox.newest(100))
                    .filteredOn(letter -> isTo(letter, BERT.value()))
                    .hasSize(1);
            audience.clock.advance(Duration.ofHours(1));
            audience.signIns.request(ANNA, Locale.ENGLISH);
            assertThat(audience.outbox.newest(100))
                    .filteredOn(letter -> isTo(letter, ANNA.value()))
                    .hasSize(6);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theDatabaseHoldsNoTokenOutsideTheLetter(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken token = audience.requested(ANNA);
            var signedIn = (SignedIn.As) audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER);
            var hashes = database.jdbi().withHandle(handle -> handle.createQuery(
                            "select token_hash from sign_in union all select token_hash from session")
                    .mapTo(String.class)
                    .list());
            assertThat(hashes)
                    .containsExactlyInAnyOrder(token.hash(), signedIn.token().hash());
            assertThat(hashes).doesNotContain(token.value(), signedIn.token().value());
            assertThat(token.toString()).doesNotContain(token.value());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theLetterSpeaksTheReadersLanguage(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.signIns.request(ANNA, Locale.forLanguageTag("de-AT"));
            OutboxMail letter = audience.outbox.newest(1).get(0);
            assertThat(letter.message().subject()).isEqualTo("Dein Anmeldelink für Quay Lessons");
            assertThat(letter.message().text()).contains("20 Minuten", "https://bass.example:8443/sign-in/");
            var as = (SignedIn.As) audience.signIns.use(audience.mailed(), Agreements.to("1"), Device.COMPUTER);
            assertThat(audience.students
                            .find(as.student())
                            .orElseThrow()
                            .locale()
                            .toLanguageTag())
                    .isEqualTo("de-AT");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneLinkUsedByManyAtOnceSignsOneIn(Database database) {
        try (database) {
            var audience = new Audience(database);
            SecretToken token = audience.requested(ANNA);
            var attempts = List.of(1, 2, 3, 4, 5, 6).stream()
                    .map(i -> CompletableFuture.supplyAsync(
                            () -> audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER)))
                    .toList();
            assertThat(attempts.stream().map(CompletableFuture::join).filter(SignedIn.As.class::isInstance))
                    .hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void ofLinksUsedAtOnceOneSignsIn(Database database) {
        try (database) {
            var audience = new Audience(database);
            var links = List.of(audience.requested(ANNA), audience.requested(ANNA), audience.requested(ANNA));
            var attempts = links.stream()
                    .map(token -> CompletableFuture.supplyAsync(
                            () -> audience.signIns.use(token, Agreements.to("1"), Device.COMPUTER)))
                    .toList();
            assertThat(attempts.stream().map(CompletableFuture::join).filter(SignedIn.As.class::isInstance))
                    .hasSize(1);
            assertThat(audience.rows("student")).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void addressesOfThoseWhoNeverCameAreGoneAfterADay(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.signIns.request(ANNA, Locale.ENGLISH);
            audience.clock.advance(Duration.ofDays(1));
            assertThat(audience.signIns.purge()).isZero();
            audience.clock.advance(Duration.ofMillis(1));
            assertThat(audience.signIns.purge()).isEqualTo(1);
        }
    }

    private static boolean isTo(OutboxMail letter, String address) {
        return letter.message().to().value().equals(address);
    }
}
