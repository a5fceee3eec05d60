package groundbass.audience;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.DownloadId;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Requester;
import groundbass.audience.download.Robots;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.student.SecretToken;
import groundbass.identity.Hmac;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.ValueSource;

class SecretsTest {
    @Test
    void authenticatesAsTheStandardShows() {
        // RFC 4231 section 4.3, test case 2
        byte[] code = Hmac.of("Jefe".getBytes(StandardCharsets.US_ASCII), "what do ya want for nothing?");
        assertThat(HexFormat.of().formatHex(code))
                .isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
    }

    @Test
    void hashesAsTheStandardShows() {
        // SHA-256 of "abc", the one-block example that accompanies FIPS 180-4
        assertThat(new SecretToken("abc").hash())
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void tokensHold256BitsAndDoNotRepeat() {
        var seen = new HashSet<String>();
        for (int i = 0; i < 1000; i++) {
            String token = SecretToken.next().value();
            assertThat(token).matches("[A-Za-z0-9_-]{43}"); // 256 bits at 6 bits a character: 42.7
            assertThat(seen.add(token)).isTrue();
        }
    }

    @Test
    void aDownloadTokenIsGoodForItsDownloadAlone() {
        var tokens = new DownloadToken(new byte[32]);
        DownloadId id = DownloadId.next(Instant.EPOCH);
        String token = tokens.sign(id);
        assertThat(tokens.verify(token)).contains(id);
        String signature = token.substring(token.indexOf('.'));
        assertThat(tokens.verify(DownloadId.next(Instant.EPOCH) + signature)).isEmpty();
        assertThat(new DownloadToken(new byte[] {1}).verify(token)).isEmpty();
        for (String odd : List.of("", ".", "x", id.value(), id.value() + ".", token + "x", token + "=", "é.é")) {
            assertThat(tokens.verify(odd)).as(odd).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theKeyOfDownloadTokensIsTheSitesOwn(Database database) {
        try (database) {
            DownloadId id = DownloadId.next(Instant.EPOCH);
            String token = DownloadToken.of(database.jdbi()).sign(id);
            assertThat(DownloadToken.of(database.jdbi()).verify(token)).contains(id);
        }
    }

    @Test
    void aVisitorIsFoundAgainForADayAndThenByNobody() {
        var clock = SettableClock.at("2026-03-02T10:00:00Z");
        var key = new VisitorKey(clock);
        String first = key.digest("192.0.2.7", "A browser/1.0");
        clock.advance(Duration.ofHours(24).minusMillis(1));
        key.destroyIfOld();
        assertThat(key.digest("192.0.2.7", "A browser/1.0")).isEqualTo(first).doesNotContain("192.0.2.7");
        assertThat(key.digest("192.0.2.8", "A browser/1.0")).isNotEqualTo(first);
        assertThat(key.digest("192.0.2.7", "A browser/1.1")).isNotEqualTo(first);
        clock.advance(Duration.ofMillis(1));
        key.destroyIfOld();
        assertThat(key.digest("192.0.2.7", "A browser/1.0")).isNotEqualTo(first);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Examplebot/2.1", "some-crawler", "A Web SPIDER", "link preview 3"})
    void programsThatVisitEverythingAreKnownByTheirWords(String agent) {
        assertThat(Robots.isRobot(agent)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "A browser/1.0 (Linux)", "player/7"})
    void everybodyElseCountsAsAPerson(String agent) {
        assertThat(Robots.isRobot(agent)).isFalse();
    }

    @Test
    void nothingShowsAnAddress() {
        assertThat(new Requester.Anonymous("192.0.2.7", "A browser/1.0").toString())
                .doesNotContain("192.0.2.7");
    }
}
