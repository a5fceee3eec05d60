package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EntityTagTest {
    private static final EntityTag XYZZY = new EntityTag("xyzzy");

    /** The examples of RFC 9110 section 13.1.2; a weak tag matches there, as the comparison is weak. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"xyzzy\"",
                "W/\"xyzzy\"",
                "\"xyzzy\", \"r2d2xxxx\", \"c3piozzzz\"",
                "W/\"r2d2xxxx\", W/\"xyzzy\"",
                "*"
            })
    void isFoundInAListOfTags(String header) {
        assertThat(XYZZY.namedIn(Optional.of(header))).isTrue();
    }

    @Test
    void anotherTagOrNoneIsNotThisOne() {
        assertThat(XYZZY.namedIn(Optional.of("\"r2d2xxxx\""))).isFalse();
        assertThat(XYZZY.namedIn(Optional.empty())).isFalse();
    }

    /** RFC 9110 section 13.1.5: If-Range compares strongly, so a weak tag never allows a part; neither does a date. */
    @Test
    void onlyTheVeryTagAllowsAPart() {
        assertThat(XYZZY.allowsRange(Optional.empty())).isTrue();
        assertThat(XYZZY.allowsRange(Optional.of("\"xyzzy\""))).isTrue();
        assertThat(XYZZY.allowsRange(Optional.of("W/\"xyzzy\""))).isFalse();
        assertThat(XYZZY.allowsRange(Optional.of("Sat, 29 Oct 1994 19:43:31 GMT")))
                .isFalse();
    }

    /** FIPS 180-2 appendix B.1: SHA-256 of "abc" begins ba7816bf 8f01cfea 414140de 5dae2223. */
    @Test
    void isMadeFromTheContentsDigest() {
        assertThat(EntityTag.ofContent("abc")).hasToString("\"ba7816bf8f01cfea414140de5dae2223\"");
    }

    @Test
    void cannotHoldAQuote() {
        assertThatThrownBy(() -> new EntityTag("a\"b")).isInstanceOf(IllegalArgumentException.class);
    }
}
