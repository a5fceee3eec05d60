package groundbass.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * What the students of a series do when its lesson is announced: a fifth of them opens it within ten minutes, most of
 * these in the first; half of those take a file home, a quarter plays along.
 */
final class Wednesday {
    private static final double OPENING = 0.2;
    private static final double TAKING = 0.5;
    private static final double PLAYING = 0.25;

    private static final double WINDOW_SECONDS = 600;
    /** Of the time until somebody opens it, which falls off exponentially (ours). */
    private static final double MEAN_SECONDS = 180;
    /** They read at first (ours). */
    private static final double LONGEST_READING_SECONDS = 120;

    private Wednesday() {}

    enum Deed {
        /** The page with the styles and scripts that it names, as in a browser that has none of them yet. */
        PAGE,
        /** What the player of the page fetches: its manifest and each stem at one tempo. */
        PLAY,
        /** One file, recorded. */
        DOWNLOAD
    }

    /** @param after since the announcement */
    record Wish(Duration after, Deed deed, int student) {}

    /** In the order of their time; the same seed makes the same evening. */
    static List<Wish> of(int students, long seed) {
        var random = new Random(seed);
        var wishes = new ArrayList<Wish>();
        for (int student = 0; student < students * OPENING; student++) {
            double opened = opening(random.nextDouble());
            wishes.add(wish(opened, Deed.PAGE, student));
            if (random.nextDouble() < TAKING) {
                wishes.add(wish(later(opened, random), Deed.DOWNLOAD, student));
            }
            if (random.nextDouble() < PLAYING) {
                wishes.add(wish(later(opened, random), Deed.PLAY, student));
            }
        }
        wishes.sort(Comparator.comparing(Wish::after));
        return wishes;
    }

    /** The exponential distribution, cut off at the end of the window. */
    private static double opening(double share) {
        double whole = 1 - Math.exp(-WINDOW_SECONDS / MEAN_SECONDS);
        return -MEAN_SECONDS * Math.log(1 - share * whole);
    }

    private static double later(double opened, Random random) {
        return opened + random.nextDouble() * LONGEST_READING_SECONDS;
    }

    private static Wish wish(double seconds, Deed deed, int student) {
        return new Wish(Duration.ofMillis((long) (seconds * 1000)), deed, student);
    }
}
