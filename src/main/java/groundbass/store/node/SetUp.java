package groundbass.store.node;

import java.util.Objects;
import java.util.Optional;

/**
 * What all servers of a site must be set up alike in.
 *
 * @param publicAddress which lessons, letters and feeds name
 * @param mail the mail server that takes letters; empty where letters stay on the desk
 */
public record SetUp(String publicAddress, String mail) {
    public SetUp {
        Objects.requireNonNull(publicAddress);
        Objects.requireNonNull(mail);
    }

    /** What differs, as a sentence; empty where nothing does. */
    Optional<String> difference(SetUp other) {
        if (!publicAddress.equals(other.publicAddress)) {
            return Optional.of("it is started for the public address " + other.publicAddress + ", this one for "
                    + publicAddress + "; give both the same (--public-address)");
        }
        if (!mail.equals(other.mail)) {
            return Optional.of("it sends letters through " + told(other.mail) + ", this one through " + told(mail)
                    + "; give both the same (--smtp-host)");
        }
        return Optional.empty();
    }

    private static String told(String mail) {
        return mail.isEmpty() ? "no mail server" : mail;
    }
}
