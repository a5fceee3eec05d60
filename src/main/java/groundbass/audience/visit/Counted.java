package groundbass.audience.visit;

import groundbass.catalog.episode.EpisodeId;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * What each visitor of each lesson has been counted for since the first time, for a day: in memory alone, and by a digest whose
 * key is destroyed within a day. Of more visits in a day than {@value #MOST}, or more than {@value #MOST_THINGS} things done
 * in all of them together (about 60 MB of memory), the oldest visits are forgotten, and may be counted again. Used by one
 * thread at a time.
 */
final class Counted {
    static final int MOST = 50_000;

    static final int MOST_THINGS = 400_000;
    /** More is not counted of one visitor of one lesson: lines and bars are not made up by the thousand. */
    static final int MOST_OF_ONE = 600;

    /** So many visitors of a lesson who are not signed in come from one network: a class, and some more. */
    static final int MOST_OF_NETWORK = 60;

    static final Duration SAME_VISIT = Duration.ofHours(24);

    /** Somebody at a lesson, told by their digest. */
    private record Who(String visitor, EpisodeId lesson) {}

    private record Seen(Set<Object> things, Instant since) {}

    /** The oldest first. */
    private final Map<Who, Seen> seen = new LinkedHashMap<>();

    private final int mostThings;
    /** How many are kept of all visits together. */
    private int things;

    Counted() {
        this(MOST_THINGS);
    }

    /** @param mostThings so many are kept of all visits together */
    Counted(int mostThings) {
        this.mostThings = mostThings;
    }

    /** Whether this is the first time in a day; asked once, it is no more. @param thing what tells it from others there */
    boolean isFirst(String visitor, EpisodeId lesson, Object thing, Instant now) {
        forget(now);
        var there = seen.computeIfAbsent(new Who(visitor, lesson), who -> new Seen(new HashSet<>(), now));
        boolean first = there.things().size() < MOST_OF_ONE && there.things().add(thing);
        if (first) {
            things++;
            makeRoom();
        }
        return first;
    }

    /** Whether a visitor is among those of their network who count at that lesson; there is no end of made-up programs. */
    boolean admits(String network, EpisodeId lesson, String visitor, Instant now) {
        forget(now);
        var there = seen.computeIfAbsent(new Who(network, lesson), who -> new Seen(new HashSet<>(), now));
        if (there.things().contains(visitor)) {
            return true;
        }
        if (there.things().size() >= MOST_OF_NETWORK) {
            return false;
        }
        there.things().add(visitor);
        things++;
        makeRoom();
        return true;
    }

    private void makeRoom() {
        var oldest = seen.values().iterator();
        while (seen.size() > MOST || things > mostThings) {
            drop(oldest, oldest.next());
        }
    }

    private void drop(Iterator<Seen> all, Seen one) {
        all.remove();
        things -= one.things().size();
    }

    /** Whatever is a day old; the oldest stand first. */
    void forget(Instant now) {
        var all = seen.values().iterator();
        boolean old = true;
        while (old && all.hasNext()) {
            Seen one = all.next();
            old = !one.since().plus(SAME_VISIT).isAfter(now);
            if (old) {
                drop(all, one);
            }
        }
    }
}
