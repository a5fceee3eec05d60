package groundbass.walkthrough;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How much a walkthrough says. */
public enum Depth {
    /** One step a bar: what comes on which count; string and technique are said where they change. */
    BRIEF,
    /** One step a beat: note values, both hands, what is new and what is hard. */
    FULL;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Depth> parse(String word) {
        return Arrays.stream(values())
                .filter(depth -> depth.word().equals(word))
                .findFirst();
    }
}
