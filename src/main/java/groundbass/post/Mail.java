package groundbass.post;

import java.net.URI;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/**
 * A letter in plain text. Its subject is one line of at most 400 characters, so that nothing typed into it can become a
 * header of its own.
 *
 * @param sendAfter not to be sent earlier
 * @param uselessAfter not to be sent later (a sign-in link that has expired helps nobody)
 * @param unsubscribe where one request ends such letters (RFC 8058); only for letters to a list
 */
public record Mail(
        @ColumnName("recipient") EmailAddress to,
        String subject,
        @ColumnName("body") String text,
        Instant sendAfter,
        Optional<Instant> uselessAfter,
        Optional<URI> unsubscribe) {
    private static final int LONGEST_SUBJECT = 400;
    private static final int LONGEST_ADDRESS = 500;

    public Mail {
        if (subject.isBlank() || subject.length() > LONGEST_SUBJECT || !isOneLine(subject)) {
            throw new IllegalArgumentException("a subject is one line of at most " + LONGEST_SUBJECT + " characters");
        }
        if (unsubscribe.filter(uri -> uri.toString().length() > LONGEST_ADDRESS).isPresent()) {
            throw new IllegalArgumentException(
                    "an address to unsubscribe at has at most " + LONGEST_ADDRESS + " characters");
        }
    }

    /** A letter to one person that may leave at once. */
    public static Mail of(EmailAddress to, String subject, String text, Instant now) {
        return new Mail(to, subject, text, now, Optional.empty(), Optional.empty());
    }

    public Mail uselessAfter(Instant end) {
        return new Mail(to, subject, text, sendAfter, Optional.of(end), unsubscribe);
    }

    public Mail withUnsubscribe(URI address) {
        return new Mail(to, subject, text, sendAfter, uselessAfter, Optional.of(address));
    }

    private static boolean isOneLine(String subject) {
        return subject.codePoints().noneMatch(c -> Character.isISOControl(c) || c == 0x2028 || c == 0x2029);
    }
}
