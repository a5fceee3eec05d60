package groundbass.post;

import jakarta.mail.Address;
import jakarta.mail.Authenticator;
import jakarta.mail.MessagingException;
import jakarta.mail.PasswordAuthentication;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;

/**
 * Sends over SMTP, in UTF-8. Waits at most ten seconds for each step of the conversation, and half a minute for
 * the whole of it: less than the pause before a letter's second try, so that no letter is on two ways at once.
 */
public final class SmtpSender implements Sender {
    private static final String PATIENCE_MILLISECONDS = "10000";
    private static final String UTF_8 = StandardCharsets.UTF_8.name();

    private static final Duration WHOLE_CONVERSATION = Duration.ofSeconds(30);
    private static final int REFUSED_FOR_GOOD = 500; // RFC 5321 section 4.2.1: 5yz, permanent negative completion

    private final SmtpSettings settings;
    private final Supplier<Correspondent> from;
    private final Clock clock;
    private final Duration longest;

    /** @param from who the letters come from; asked for each letter */
    public SmtpSender(SmtpSettings settings, Supplier<Correspondent> from, Clock clock) {
        this(settings, from, clock, WHOLE_CONVERSATION);
    }

    SmtpSender(SmtpSettings settings, Supplier<Correspondent> from, Clock clock, Duration longest) {
        this.settings = settings;
        this.from = from;
        this.clock = clock;
        this.longest = longest;
    }

    @Override
    public Delivery send(MessageId id, Mail message) throws SendingFailed {
        var sockets = new LetterSockets();
        var end = CompletableFuture.runAsync(
                sockets::close, CompletableFuture.delayedExecutor(longest.toMillis(), TimeUnit.MILLISECONDS));
        try {
            var session = Session.getInstance(properties(settings, sockets), authenticator(settings));
            Transport.send(mime(session, id, message));
            return Delivery.SENT;
        } catch (MessagingException e) {
            throw failure(e, sockets);
        } catch (UnsupportedEncodingException e) {
            throw new SendingFailed(e);
        } finally {
            end.cancel(false);
        }
    }

    private SendingFailed failure(MessagingException cause, LetterSockets sockets) {
        if (sockets.isClosed()) {
            return new SendingFailed("The mail server took longer than " + longest.toSeconds() + " seconds");
        }
        if (!isRefusedForGood(cause)) {
            return new SendingFailed(cause);
        }
        return isOfAddress(cause) ? SendingFailed.forThisAddress(cause) : SendingFailed.forGood(cause);
    }

    /** A refused login or sender is not the letter's fault, and may be mended; a refused reader or text stays refused. */
    private static boolean isRefusedForGood(MessagingException failure) {
        var causes = chain(failure);
        return causes.stream().noneMatch(SMTPSenderFailedException.class::isInstance)
                && causes.stream().mapToInt(SmtpSender::replyCode).anyMatch(code -> code >= REFUSED_FOR_GOOD);
    }

    private static boolean isOfAddress(MessagingException failure) {
        return chain(failure).stream()
                .filter(SMTPAddressFailedException.class::isInstance)
                .anyMatch(cause -> replyCode(cause) >= REFUSED_FOR_GOOD);
    }

    private static List<MessagingException> chain(MessagingException failure) {
        var chain = new ArrayList<MessagingException>();
        for (Exception next = failure; next instanceof MessagingException one; next = one.getNextException()) {
            chain.add(one);
        }
        return chain;
    }

    /** The mail server's answer; 0 where the failure is none. */
    private static int replyCode(MessagingException failure) {
        if (failure instanceof SMTPAddressFailedException reader) {
            return reader.getReturnCode();
        }
        return failure instanceof SMTPSendFailedException text ? text.getReturnCode() : 0;
    }

    private MimeMessage mime(Session session, MessageId id, Mail message)
            throws MessagingException, UnsupportedEncodingException {
        var mime = new NamedMessage(
                session, "<" + id.value() + "@" + settings.from().domain() + ">");
        var writer = from.get();
        mime.setFrom(new InternetAddress(settings.from().value(), writer.name(), UTF_8));
        if (writer.replyTo().isPresent()) {
            mime.setReplyTo(
                    new Address[] {new InternetAddress(writer.replyTo().get().value())});
        }
        mime.setRecipient(
                MimeMessage.RecipientType.TO, new InternetAddress(message.to().value()));
        mime.setSubject(message.subject(), UTF_8);
        fill(mime, message);
        mime.setSentDate(Date.from(clock.instant()));
        mime.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834 section 5: no holiday notes in answer
        if (message.unsubscribe().isPresent()) {
            mime.setHeader("List-Unsubscribe", "<" + message.unsubscribe().get() + ">");
            mime.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click"); // RFC 8058 section 3.1
        }
        return mime;
    }

    /** Of two forms the plain one comes first: the last is the one to be preferred (RFC 2046 section 5.1.4). */
    private static void fill(MimeMessage mime, Mail message) throws MessagingException {
        if (message.html().isEmpty()) {
            mime.setText(message.text(), UTF_8);
            return;
        }
        var plain = new MimeBodyPart();
        plain.setText(message.text(), UTF_8);
        var formatted = new MimeBodyPart();
        formatted.setText(message.html().get(), UTF_8, "html");
        mime.setContent(new MimeMultipart("alternative", plain, formatted));
    }

    private static Properties properties(SmtpSettings settings, LetterSockets sockets) {
        var properties = new Properties();
        properties.put("mail.smtp.socketFactory", sockets);
        properties.put("mail.smtp.socketFactory.fallback", "false");
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
