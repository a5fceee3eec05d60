package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

class DevelopmentSenderTest {
    @Test
    void logsThatALetterWaitsAndNothingOfIt() {
        var lines = new ListAppender<ILoggingEvent>();
        var log = (Logger) LoggerFactory.getLogger(DevelopmentSender.class);
        lines.start();
        log.addAppender(lines);
        var reader = new EmailAddress("reader@example.org");
        MessageId id = MessageId.next();
        new DevelopmentSender().send(id, Mail.of(reader, "Link", "http://here/sign-in/secret", Instant.EPOCH));
        log.detachAppender(lines);

        assertThat(lines.list).hasSize(1);
        assertThat(lines.list.get(0).getFormattedMessage())
                .contains("waits on the desk", id.value())
                .doesNotContain("secret", "reader@example.org");
    }
}
