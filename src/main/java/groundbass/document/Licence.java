package groundbass.document;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * By what music of somebody else may be published; kept on the desk. As typed, so that nothing is lost that is no date.
 *
 * @param reference number or name of the permission, or where it is kept
 * @param from      who gave it
 * @param until     the last day on which it holds, year, month and day (ISO 8601); empty where it does not end
 */
public record Licence(String reference, String from, String until) {
    public static final Licence NONE = new Licence("", "", "");

    public Licence {
        Objects.requireNonNull(reference);
        Objects.requireNonNull(from);
        Objects.requireNonNull(until);
    }

    /** Its last day, where it has one. */
    public Optional<LocalDate> lastDay() {
        try {
            return until.isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(until.strip()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Whether what is typed of its end is a day, or nothing. */
    public boolean isEndReadable() {
        return until.isBlank() || lastDay().isPresent();
    }
}
