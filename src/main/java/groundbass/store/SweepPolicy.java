package groundbass.store;

import java.time.Duration;
import java.util.List;

/** What sweeps of files obey, wherever the files lie. */
public final class SweepPolicy {
    /** A file that was put so lately may not have been named yet. */
    public static final Duration YOUNG = Duration.ofDays(1);

    /** So long a file that no row names waits before it is deleted. */
    public static final Duration SET_ASIDE = Duration.ofDays(30);

    private static final int HANDFUL = 5;
    private static final int MOST_AT_ONCE = 200;

    private SweepPolicy() {}

    /**
     * Whether so many of all without a name say that rows are missing, rather than files unwanted: more than half of them. A
     * young site whose previews are forgotten has a third.
     */
    public static boolean isTooMany(int unnamed, int all) {
        return unnamed > HANDFUL && unnamed > all - unnamed;
    }

    /** What one sweep sets aside of them. */
    public static <T> List<T> atOnce(List<T> unnamed) {
        return unnamed.subList(0, Math.min(MOST_AT_ONCE, unnamed.size()));
    }
}
