package groundbass.post;

import jakarta.mail.Authenticator;
import jakarta.mail.MessagingException;
import jakarta.mail.PasswordAuthentication;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;
import java.util.Optional;
import java.util.Properties;

/** Sends over SMTP as plain UTF-8 text. Waits at most ten seconds for each step of the conversation. */
public final class SmtpSender implements Sender {
    private static final String PATIENCE_MILLISECONDS = "10000";
    private static final String UTF_8 = StandardCharsets.UTF_8.name();

    private final SmtpSettings settings;
    private final Session session;
    private final Clock clock;

    public SmtpSender(SmtpSettings settings, Clock clock) {
        this.settings = settings;
        this.session = Session.getInstance(properties(settings), authenticator(settings));
        this.clock = clock;
    }

    @Override
    public Delivery send(MessageId id, Message message) throws SendingFailed {
        try {
            Transport.send(mime(id, message));
            return Delivery.SENT;
        } catch (MessagingException | UnsupportedEncodingException e) {
            throw new SendingFailed(e);
        }
    }

    private MimeMessage mime(MessageId id, Message message) throws MessagingException, UnsupportedEncodingException {
        var mime = new NamedMessage(
                session, "<" + id.value() + "@" + settings.from().domain() + ">");
        mime.setFrom(new InternetAddress(settings.from().value(), settings.fromName(), UTF_8));
        mime.setRecipient(
                MimeMessage.RecipientType.TO, new InternetAddress(message.to().value()));
        mime.setSubject(message.subject(), UTF_8);
        mime.setText(message.text(), UTF_8);
        mime.setSentDate(Date.from(clock.instant()));
        mime.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834 section 5: no holiday notes in answer
        if (message.unsubscribe().isPresent()) {
            mime.setHeader("List-Unsubscribe", "<" + message.unsubscribe().get() + ">");
            mime.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click"); // RFC 8058 section 3.1
        }
        return mime;
    }

    private static Properties properties(SmtpSettings settings) {
        var properties = new Properties();
        properties.put("mail.smtp.host", settings.host());
        properties.put("mail.smtp.port", Integer.toString(settings.port()));
        properties.put("mail.smtp.connectiontimeout", PATIENCE_MILLISECONDS);
        properties.put("mail.smtp.timeout", PATIENCE_MILLISECONDS);
        properties.put("mail.smtp.writetimeout", PATIENCE_MILLISECONDS);
        properties.put("mail.smtp.ssl.checkserveridentity", "true");
        properties.put("mail.smtp.auth", Boolean.toString(settings.login().isPresent()));
        switch (settings.encryption()) {
            case STARTTLS -> {
                properties.put("mail.smtp.starttls.enable", "true");
                properties.put("mail.smtp.starttls.required", "true");
            }
            case FROM_THE_START -> properties.put("mail.smtp.ssl.enable", "true");
            case NONE -> properties.put("mail.smtp.starttls.enable", "false");
        }
        return properties;
    }

    private static Authenticator authenticator(SmtpSettings settings) {
        Optional<SmtpSettings.Login> login = settings.login();
        return new Authenticator() {
            @Override
            protected PasswordAuthentication getPasswordAuthentication() {
                return login.map(l -> new PasswordAuthentication(l.name(), l.password()))
                        .orElse(null);
            }
        };
    }

    /** Keeps its own Message-ID: the library's would name the machine and the user it runs as. */
    private static final class NamedMessage extends MimeMessage {
        private final String messageId;

        private NamedMessage(Session session, String messageId) {
            super(session);
            this.messageId = messageId;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", messageId);
        }
    }
}
