package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.configuration.GreenMailConfiguration;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetupTest;
import groundbass.store.SettableClock;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Date;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against a mail server of somebody else's. */
class SmtpSenderTest {
    private static final SettableClock CLOCK = SettableClock.at("2026-03-02T10:00:00Z");
    private static final EmailAddress STUDIO = new EmailAddress("studio@example.org");
    private static final EmailAddress READER = new EmailAddress("reader@example.net");
    private static final Correspondent STUDIO_ITSELF = new Correspondent("Studio", Optional.empty());
    private static final EmailAddress TEACHER = new EmailAddress("teacher@example.org");
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
        Mail message = Mail.of(READER, "Folge 3: Übung für „Ghost“ 𝄢", "Grüße\n\n𝄢 ♭\n", CLOCK.instant());
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
        Mail message = Mail.of(READER, "New", "x", CLOCK.instant())
                .withUnsubscribe(URI.create("https://example.org/unsubscribe/opaque"));
        sender(SmtpSettings.Encryption.NONE).send(MessageId.next(), message);
        MimeMessage received = server.getReceivedMessages()[0];
        assertThat(received.getHeader("List-Unsubscribe")).containsExactly("<https://example.org/unsubscribe/opaque>");
        assertThat(received.getHeader("List-Unsubscribe-Post")).containsExactly("List-Unsubscribe=One-Click");
    }

    /** RFC 2046 section 5.1.4: the same in several forms, the plainest first. RFC 5322 section 3.6.2: Reply-To. */
    @Test
    void sendsALetterInTwoFormsAndSaysWhoIsAnswered() throws Exception {
        Mail message = Mail.of(READER, "New", "Grüße", CLOCK.instant()).withHtml("<!DOCTYPE html><p>Grüße");
        sender(SmtpSettings.Encryption.NONE).send(MessageId.next(), message);
        MimeMessage received = server.getReceivedMessages()[0];
        assertThat(received.getContentType()).startsWith("multipart/alternative");
        var forms = (MimeMultipart) received.getContent();
        assertThat(forms.getCount()).isEqualTo(2);
        assertThat(forms.getBodyPart(0).getContentType().toLowerCase()).startsWith("text/plain");
        assertThat(forms.getBodyPart(0).getContent()).isEqualTo("Grüße");
        assertThat(forms.getBodyPart(1).getContentType().toLowerCase()).startsWith("text/html");
        assertThat(forms.getBodyPart(1).getContent()).isEqualTo("<!DOCTYPE html><p>Grüße");
        assertThat(received.getReplyTo()).containsExactly(new InternetAddress(TEACHER.value()));
    }

    @Test
    void sendsNothingInTheClearWhereEncryptionWasAskedFor() {
        SmtpSender sender = sender(SmtpSettings.Encryption.STARTTLS);
        Mail message = Mail.of(READER, "New", "x", CLOCK.instant());
        assertThatThrownBy(() -> sender.send(MessageId.next(), message)).isInstanceOf(SendingFailed.class);
        assertThat(server.getReceivedMessages()).isEmpty();
    }

    @Test
    void saysSoWhenNobodyAnswers() {
        int port = server.getSmtp().getPort();
        SmtpSender sender = sender(SmtpSettings.Encryption.NONE);
        server.stop();
        Mail message = Mail.of(READER, "New", "x", CLOCK.instant());
        assertThatThrownBy(() -> sender.send(MessageId.next(), message))
                .isInstanceOf(SendingFailed.class)
                .hasMessageContaining(Integer.toString(port))
                .hasMessageNotContaining("not-a-real-password");
    }

    @Test
    void lettersComeFromTheSiteByItsName() throws Exception {
        sender(SmtpSettings.Encryption.NONE).send(MessageId.next(), Mail.of(READER, "New", "x", CLOCK.instant()));
        var from = (InternetAddress) server.getReceivedMessages()[0].getFrom()[0];
        assertThat(from.getPersonal()).isEqualTo("Über-Studio");
    }

    /** RFC 5321 section 4.2.1: 220 with a hyphen goes on, and on. */
    @Test
    void aServerThatAnswersALittleNowAndThenIsLeftInTheEnd() throws Exception {
        try (var dripping = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            var server = new Thread(() -> drip(dripping));
            server.start();
            var sender = new SmtpSender(
                    settings(dripping.getLocalPort(), SmtpSettings.Encryption.NONE),
                    () -> STUDIO_ITSELF,
                    CLOCK,
                    Duration.ofMillis(500));
            assertThatThrownBy(() -> sender.send(MessageId.next(), Mail.of(READER, "New", "x", CLOCK.instant())))
                    .isInstanceOf(SendingFailed.class)
                    .hasMessageContaining("longer than")
                    .satisfies(failure ->
                            assertThat(((SendingFailed) failure).isFinal()).isFalse());
            server.join(60_000);
            assertThat(server.isAlive()).as("the connection is closed").isFalse();
        }
    }

    /** Goes on until the other side has closed. */
    private static void drip(ServerSocket from) {
        try (var socket = from.accept()) {
            socket.setSoTimeout(20);
            while (!hasClosed(socket)) {
                socket.getOutputStream().write("220-wait\r\n".getBytes(StandardCharsets.US_ASCII));
            }
        } catch (IOException closed) {
            assertThat(closed).as("the other side has left").isNotNull();
        }
    }

    private static boolean hasClosed(Socket socket) throws IOException {
        try {
            return socket.getInputStream().read() < 0;
        } catch (SocketTimeoutException stillThere) {
            return false;
        }
    }

    /** Replies of RFC 5321: 550 "mailbox unavailable" (section 4.2.3), 450 "busy" (section 4.2.2), 553 for the sender. */
    @ParameterizedTest
    @CsvSource({
        "RCPT, 550, true, true",
        "RCPT, 450, false, false",
        "DATA, 554, true, false",
        "DATA, 452, false, false",
        "MAIL, 553, false, false"
    })
    void tellsARefusalForGoodFromOneForNow(String command, int reply, boolean isFinal, boolean isOfAddress)
            throws Exception {
        try (var refusing = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            new Thread(() -> refuse(refusing, command, reply)).start();
            var sender = new SmtpSender(
                    settings(refusing.getLocalPort(), SmtpSettings.Encryption.NONE), () -> STUDIO_ITSELF, CLOCK);
            assertThatThrownBy(() -> sender.send(MessageId.next(), Mail.of(READER, "New", "x", CLOCK.instant())))
                    .isInstanceOfSatisfying(SendingFailed.class, failure -> {
                        assertThat(failure.isFinal()).isEqualTo(isFinal);
                        assertThat(failure.isOfAddress()).isEqualTo(isOfAddress);
                    });
        }
    }

    private static void refuse(ServerSocket from, String command, int reply) {
        try (var socket = from.accept();
                var in =
                        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))) {
            var out = socket.getOutputStream();
            out.write("220 trial.example\r\n".getBytes(StandardCharsets.US_ASCII));
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String answer = line.startsWith(command) ? reply + " no" : "250 yes";
                out.write((answer + "\r\n").getBytes(StandardCharsets.US_ASCII));
            }
        } catch (IOException closed) {
            assertThat(closed).as("the other side has left").isNotNull();
        }
    }

    private static SmtpSettings settings(int port, SmtpSettings.Encryption encryption) {
        return new SmtpSettings("localhost", port, encryption, Optional.empty(), STUDIO);
    }

    @Test
    void doesNotShowItsPassword() {
        assertThat(LOGIN.toString()).doesNotContain("not-a-real-password");
    }

    private SmtpSender sender(SmtpSettings.Encryption encryption) {
        int port = server.getSmtp().getPort();
        return new SmtpSender(
                new SmtpSettings("localhost", port, encryption, Optional.of(LOGIN), STUDIO),
                () -> new Correspondent("Über-Studio", Optional.of(TEACHER)),
                CLOCK);
    }
}
