package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NextTest {
    @Test
    void goesBackToAPathOfThisSite() {
        assertThat(Next.orElse(Optional.of("/me?page=2"), "/")).isEqualTo("/me?page=2");
        assertThat(Next.orElse(Optional.of("/"), "/me")).isEqualTo("/");
        assertThat(Next.orElse(Optional.empty(), "/me")).isEqualTo("/me");
    }

    /** WHATWG URL, section 4.4: browsers read a backslash as a slash, and two of them as another host. */
    @ParameterizedTest
    @ValueSource(strings = {"//evil.example", "/\\evil.example", "https://evil.example", "evil", "/a\r\nb", "/a\\b"})
    void neverLeadsElsewhere(String wish) {
        assertThat(Next.orElse(Optional.of(wish), "/me")).isEqualTo("/me");
    }
}
