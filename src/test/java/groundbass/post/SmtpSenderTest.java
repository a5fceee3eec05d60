package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.configuration.GreenMailConfiguration;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetupTest;
import groundbass.store.SettableClock;
import jakarta.mail.internet.MimeMessage;
import java.net.URI;
import java.util.Date;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Against a mail server of somebody else's. */
class SmtpSenderTest {
    private static final SettableClock CLOCK = SettableClock.at("2026-03-02T10:00:00Z");
    private static final EmailAddress STUDIO = new EmailAddress("studio@example.org");
    private static final EmailAddress READER = new EmailAddress("reader@example.net");
    private static final SmtpSettings.Login LOGIN = new SmtpSettings.Login("studio", "not-a-real-password");

    private final GreenMail server = new GreenMail(ServerSetupTest.SMTP.dynamicPort())
            .withConfiguration(GreenMailConfiguration.aConfig().withUser("studio", "not-a-real-password"));

    @BeforeEach
    void open() {
        server.start();
    }

    @AfterEach
    void close() {
        server.stop();
    }

    @Test
    void sendsPlainTextInUtf8() throws Exception {
        Message message = Message.of(READER, "Folge 3: Übung für „Ghost“ 𝄢", "Grüße\n\n𝄢 ♭\n", CLOCK.instant());
        MessageId id = MessageId.next();
        assertThat(sender(SmtpSettings.Encryption.NONE).send(id, message)).isEqualTo(Delivery.SENT);

        MimeMessage received = server.getReceivedMessages()[0];
        assertThat(received.getSubject()).isEqualTo("Folge 3: Übung für „Ghost“ 𝄢");
        assertThat(received.getContent().toString().replace("\r\n", "\n").strip())
                .isEqualTo("Grüße\n\n𝄢 ♭");
        assertThat(received.getContentType().toLowerCase())
                .startsWith("text/plain")
                .contains("utf-8");
        assertThat(received.getAllRecipients()).hasSize(1);
        assertThat(received.getFrom()[0].toString()).contains("studio@example.org");
        assertThat(received.getSentDate()).isEqualTo(Date.from(CLOCK.instant()));
        assertThat(received.getMessageID()).isEqualTo("<" + id.value() + "@example.org>");
        assertThat(received.getHeader("Auto-Submitted")).containsExactly("auto-generated");
        assertThat(received.getHeader("List-Unsubscribe")).isNull();
    }

    /** RFC 8058 section 8.1 shows these two headers. */
    @Test
    void offersToUnsubscribeWithOneRequest() throws Exception {
        Message message = Message.of(READER, "New", "x", CLOCK.instant())
                .withUnsubscribe(URI.create("https://example.org/unsubscribe/opaque"));
        sender(SmtpSettings.Encryption.NONE).send(MessageId.next(), message);
        MimeMessage received = server.getReceivedMessages()[0];
        assertThat(received.getHeader("List-Unsubscribe")).containsExactly("<https://example.org/unsubscribe/opaque>");
        assertThat(received.getHeader("List-Unsubscribe-Post")).containsExactly("List-Unsubscribe=One-Click");
    }

    @Test
    void sendsNothingInTheClearWhereEncryptionWasAskedFor() {
        SmtpSender sender = sender(SmtpSettings.Encryption.STARTTLS);
        Message message = Message.of(READER, "New", "x", CLOCK.instant());
        assertThatThrownBy(() -> sender.send(MessageId.next(), message)).isInstanceOf(SendingFailed.class);
        assertThat(server.getReceivedMessages()).isEmpty();
    }

    @Test
    void saysSoWhenNobodyAnswers() {
        int port = server.getSmtp().getPort();
        SmtpSender sender = sender(SmtpSettings.Encryption.NONE);
        server.stop();
        Message message = Message.of(READER, "New", "x", CLOCK.instant());
        assertThatThrownBy(() -> sender.send(MessageId.next(), message))
                .isInstanceOf(SendingFailed.class)
                .hasMessageContaining(Integer.toString(port))
                .hasMessageNotContaining("not-a-real-password");
    }

    @Test
    void doesNotShowItsPassword() {
        assertThat(LOGIN.toString()).doesNotContain("not-a-real-password");
    }

    private SmtpSender sender(SmtpSettings.Encryption encryption) {
        int port = server.getSmtp().getPort();
        return new SmtpSender(
                new SmtpSettings("localhost", port, encryption, Optional.of(LOGIN), STUDIO, "Über-Studio"), CLOCK);
    }
}
