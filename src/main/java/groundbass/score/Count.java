package groundbass.score;

import java.util.List;
import java.util.Optional;

/**
 * A place in a bar as players say it: a number and a quarter of it, {@code 2}, {@code 2e}, {@code 2&}, {@code 2a}. The
 * numbers count the meter's lower figure.
 *
 * @param number from 1
 * @param quarter 0 to 3
 */
public record Count(int number, int quarter) {
    private static final List<String> SYLLABLES = List.of("", "e", "&", "a");

    public Count {
        if (number < 1 || quarter < 0 || quarter >= SYLLABLES.size()) {
            throw new IllegalArgumentException("no such count: " + number + " and " + quarter + " quarters");
        }
    }

    /** The count at a time from the start of the bar; empty where nobody has a word for it (inside a tuplet). */
    public static Optional<Count> at(Fraction offset, Meter meter) {
        var quarters = offset.dividedBy(meter.count()).times(SYLLABLES.size());
        if (offset.isNegative() || quarters.denominator() != 1) {
            return Optional.empty();
        }
        int whole = Math.toIntExact(quarters.numerator());
        return Optional.of(new Count(whole / SYLLABLES.size() + 1, whole % SYLLABLES.size()));
    }

    /** Reads {@code 2&}; empty where the text is no count. */
    public static Optional<Count> parse(String text) {
        int digits = 0;
        while (digits < text.length() && Character.digit(text.charAt(digits), 10) >= 0) {
            digits++;
        }
        int quarter = SYLLABLES.indexOf(text.substring(digits));
        if (digits == 0 || digits > 2 || quarter < 0 || Integer.parseInt(text.substring(0, digits)) < 1) {
            return Optional.empty();
        }
        return Optional.of(new Count(Integer.parseInt(text.substring(0, digits)), quarter));
    }

    /** The time from the start of the bar. */
    public Fraction offset(Meter meter) {
        return meter.count().times(number - 1L).plus(meter.count().times(Fraction.of(quarter, SYLLABLES.size())));
    }

    /** What is said after its number: {@code e}, {@code &}, {@code a}; empty on the number. */
    public String syllable() {
        return SYLLABLES.get(quarter);
    }

    @Override
    public String toString() {
        return number + syllable();
    }
}
