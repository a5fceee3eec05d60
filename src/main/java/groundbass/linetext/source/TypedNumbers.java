package groundbass.linetext.source;

import groundbass.score.Fraction;
import java.util.Optional;

/** Whole numbers and fractions as they are typed; small ones only, so that nothing overflows. */
public final class TypedNumbers {
    private static final int MOST_DIGITS = 6;

    private TypedNumbers() {}

    /** A number of at most six plain digits. */
    public static Optional<Integer> whole(String text) {
        boolean digits = !text.isEmpty() && text.chars().allMatch(c -> c >= '0' && c <= '9');
        return digits && text.length() <= MOST_DIGITS ? Optional.of(Integer.parseInt(text)) : Optional.empty();
    }

    /** {@code 3/8}; a whole number is no fraction here. */
    public static Optional<Fraction> fraction(String text) {
        int slash = text.indexOf('/');
        if (slash < 0) {
            return Optional.empty();
        }
        var over = whole(text.substring(0, slash));
        var under = whole(text.substring(slash + 1)).filter(n -> n > 0);
        return over.isPresent() && under.isPresent()
                ? Optional.of(Fraction.of(over.get(), under.get()))
                : Optional.empty();
    }
}
