package groundbass.catalog.settings;

import java.util.Objects;
import java.util.Optional;

/**
 * What holds for the accounts of students.
 *
 * @param idleMonths after how many months without use one ends; none where they stay
 * @param age from which on nobody needs a guardian's consent; where there is one, the holder of an
 *     address is asked once, before there is an account
 */
public record AccountRules(Optional<Integer> idleMonths, Optional<Integer> age) {
    /** What holds until something is chosen. */
    public static final AccountRules USUAL = new AccountRules(Optional.empty(), Optional.empty());

    public AccountRules {
        Objects.requireNonNull(idleMonths);
        Objects.requireNonNull(age);
    }
}
