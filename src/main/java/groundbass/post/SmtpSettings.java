package groundbass.post;

import java.util.Optional;

/** The mail server of the house, and the address that letters come from. */
public record SmtpSettings(String host, int port, Encryption encryption, Optional<Login> login, EmailAddress from) {
    /** How the way to the server is kept private. */
    public enum Encryption {
        /** Plain at first, then encrypted or not at all (RFC 3207): a server that does not offer it is refused. */
        STARTTLS,
        /** Encrypted from the first byte (RFC 8314). */
        FROM_THE_START,
        /** Only for a server on the same machine. */
        NONE
    }

    /** Name and password; the password is not shown. */
    public record Login(String name, String password) {
        @Override
        public String toString() {
            return "Login[" + name + "]";
        }
    }

    public SmtpSettings {
        if (host.isBlank()) throw new IllegalArgumentException("a mail server has a name");
        if (port < 1 || port > 65535) throw new IllegalArgumentException("not a port: " + port);
    }
}
