package groundbass.catalog.episode;

import java.time.Instant;
import java.util.Objects;

/**
 * That a lesson was taken back from students.
 *
 * @param why as they are told; may be empty
 */
public record Withdrawal(Instant at, String why) {
    public static final int LONGEST_REASON = 500;

    public Withdrawal {
        Objects.requireNonNull(at);
        Objects.requireNonNull(why);
    }
}
