package groundbass.linetext.source;

import java.util.List;
import java.util.Optional;

/** Numbers as one says them, up to twelve; beyond, and where somebody prefers them, in figures. */
public final class NumberWords {
    private static final List<String> WORDS =
            List.of("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve");

    private NumberWords() {}

    /** A number from 1 that can be read. */
    public static Optional<Integer> parse(String text) {
        int place = WORDS.indexOf(text);
        return place >= 0 ? Optional.of(place + 1) : TypedNumbers.whole(text).filter(number -> number > 0);
    }

    /** @param number from 1 */
    public static String of(int number) {
        return number <= WORDS.size() ? WORDS.get(number - 1) : String.valueOf(number);
    }
}
