package groundbass.post;

import java.net.URI;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/**
 * A letter in plain text, and the same as HTML where there is that. Its subject is one line of at most 400 characters, so
 * that nothing typed into it can become a header of its own.
 *
 * @param sendAfter not to be sent earlier
 * @param uselessAfter not to be sent later (a sign-in link that has expired helps nobody)
 * @param unsubscribe where one request ends such letters (RFC 8058); only for letters to a list
 * @param html a whole page that loads nothing from elsewhere; says what the text says
 */
public record Mail(
        @ColumnName("recipient") EmailAddress to,
        String subject,
        @ColumnName("body") String text,
        Instant sendAfter,
        Optional<Instant> uselessAfter,
        Optional<URI> unsubscribe,
        Optional<String> html) {
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
        return new Mail(to, subject, text, now, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public Mail uselessAfter(Instant end) {
        return new Mail(to, subject, text, sendAfter, Optional.of(end), unsubscribe, html);
    }

    public Mail withUnsubscribe(URI address) {
        return new Mail(to, subject, text, sendAfter, uselessAfter, Optional.of(address), html);
    }

    public Mail withHtml(String page) {
        return new Mail(to, subject, text, sendAfter, uselessAfter, unsubscribe, Optional.of(page));
    }

    /** A text of any form as a subject: on one line, and cut where it is too long. */
    public static String subjectOf(String text) {
        String line = text.replaceAll("[\\p{Cntrl}\\u2028\\u2029]", " ").strip();
        return line.length() <= LONGEST_SUBJECT ? line : line.substring(0, LONGEST_SUBJECT);
    }

    /** Where it is logged, nobody reads what is written to whom. */
    @Override
    public String toString() {
        return "a letter of " + text.length() + " characters, to be sent after " + sendAfter;
    }

    private static boolean isOneLine(String subject) {
        return subject.codePoints().noneMatch(c -> Character.isISOControl(c) || c == 0x2028 || c == 0x2029);
    }
}
