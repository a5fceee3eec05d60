package groundbass.site;

import groundbass.post.Correspondent;
import groundbass.post.DevelopmentSender;
import groundbass.post.Sender;
import groundbass.post.SmtpSender;
import groundbass.post.SmtpSettings;
import groundbass.post.SmtpSettings.Encryption;
import groundbass.publishing.address.LocalAddress;
import java.time.Clock;
import java.util.function.Supplier;

/** How letters leave the house. */
final class MailFactory {
    private static final int SUBMISSIONS = 465; // RFC 8314 section 7.3: encrypted from the first byte

    private MailFactory() {}

    /**
     * Without a mail server letters stay where the educator can read them.
     *
     * @param from who letters come from
     */
    static Sender sender(Config config, Supplier<Correspondent> from, Clock clock) {
        return config.mail()
                .<Sender>map(server -> new SmtpSender(settings(server), from, clock))
                .orElseGet(DevelopmentSender::new);
    }

    private static SmtpSettings settings(Config.MailServer server) {
        var login = server.user()
                .map(name -> new SmtpSettings.Login(
                        name, server.password().map(Secret::value).orElse("")));
        return new SmtpSettings(server.host(), server.port(), encryption(server), login, server.from());
    }

    private static Encryption encryption(Config.MailServer server) {
        if (LocalAddress.isLoopback(server.host())) {
            return Encryption.NONE;
        }
        return server.port() == SUBMISSIONS ? Encryption.FROM_THE_START : Encryption.STARTTLS;
    }
}
