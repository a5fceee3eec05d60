package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EmailAddressTest {
    /** Atoms and dot-strings of RFC 5321 section 4.1.2 with the atext of RFC 5322 section 3.2.3. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "a@example.org",
                "first.last@sub.example.org",
                "low+string@example.org",
                "o'neck@example.org",
                "x_y-z@example.org",
                "!#$%&'*+/=?^_`{|}~-@example.org",
                "player@localhost"
            })
    void readsDotStrings(String typed) {
        assertThat(EmailAddress.read(typed)).map(EmailAddress::value).contains(typed);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "a",
                "@example.org",
                "a@",
                "a b@example.org",
                ".a@example.org",
                "a.@example.org",
                "a..b@example.org",
                "a@-example.org",
                "a@example..org",
                "a@b@example.org",
                "a@exa mple.org",
                "\"a b\"@example.org",
                "a@example.org>",
                "<a@example.org",
                "a,b@example.org",
                "ä@example.org"
            })
    void refusesEverythingElse(String typed) {
        assertThat(EmailAddress.read(typed)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"a@example.org\r\nBcc: b@example.org", "a\n@example.org", "a@example.org\u0000", "a\r\nB:c@x.org"
            })
    void cannotCarryAHeader(String typed) {
        assertThat(EmailAddress.read(typed)).isEmpty();
        assertThatThrownBy(() -> new EmailAddress(typed)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void isOneReaderHoweverTyped() {
        assertThat(EmailAddress.read("  Low.String@Example.ORG "))
                .map(EmailAddress::value)
                .contains("low.string@example.org");
    }

    @Test
    void writesAnInternationalDomainInAscii() {
        // by the algorithm of RFC 3492 "bücher" is "bcher-kva", with the prefix of RFC 5890
        assertThat(EmailAddress.read("a@bücher.example"))
                .map(EmailAddress::value)
                .contains("a@xn--bcher-kva.example");
    }

    @Test
    void keepsToTheLengthsOfSmtp() {
        // RFC 5321 section 4.5.3.1.1: local part at most 64 octets
        assertThat(EmailAddress.read("a".repeat(64) + "@example.org")).isPresent();
        assertThat(EmailAddress.read("a".repeat(65) + "@example.org")).isEmpty();
        assertThat(EmailAddress.read("a@" + "b.".repeat(130) + "org")).isEmpty();
    }
}
