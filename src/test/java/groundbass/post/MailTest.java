package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MailTest {
    private static final EmailAddress READER = new EmailAddress("reader@example.org");

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "New\r\nBcc: b@example.org", "New\nlesson", "New\u2028lesson", "New\u0000"})
    void aSubjectIsOneLine(String subject) {
        assertThatThrownBy(() -> Mail.of(READER, subject, "text", Instant.EPOCH))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aSubjectMayBeInAnyLanguage() {
        assertThat(Mail.of(READER, "Für dich: 低音", "text", Instant.EPOCH).subject())
                .isEqualTo("Für dich: 低音");
    }

    /** A record that holds one is logged with it. */
    @Test
    void whatIsWrittenToWhomIsNotToldByItsName() {
        assertThat(Mail.of(READER, "For you", "Dear Ada", Instant.EPOCH).toString())
                .doesNotContain("reader", "For you", "Dear");
    }
}
