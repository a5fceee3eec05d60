package groundbass.web.student.file;

import groundbass.effort.Busy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The places of those who take a whole series: few, since each holds a thread as long as it lasts. A network has only some
 * of them, and where all are taken, who has not moved for a while gives theirs to whoever comes. Thread-safe.
 */
final class SeriesPlaces {
    /** More than a class that takes a series together needs, a few at a time. */
    static final int EACH = 4;

    static final int ALL = 16;
    /** How much has to move within {@link #STANDING} for a place to count as used: 35 kB a second. */
    static final int STEP = 1 << 20;

    static final Duration STANDING = Duration.ofSeconds(30);

    private static final Duration PAUSE = Duration.ofMinutes(1);

    private final Clock clock;
    private final List<Place> taken = new ArrayList<>();

    SeriesPlaces(Clock clock) {
        this.clock = clock;
    }

    /**
     * Takes a place, to be left in any case.
     *
     * @param cut ends what its holder is doing, from another thread
     * @throws Busy where there is none
     */
    synchronized Place enter(String network, Runnable cut) {
        var here = taken.stream().filter(place -> place.network.equals(network)).toList();
        if (here.size() >= EACH) {
            takeOver(here);
        } else if (taken.size() >= ALL) {
            takeOver(taken);
        }
        var place = new Place(network, cut, clock.instant());
        taken.add(place);
        return place;
    }

    private void takeOver(List<Place> places) {
        Instant before = clock.instant().minus(STANDING);
        var standing = places.stream()
                .filter(place -> !place.moved.isAfter(before))
                .min(Comparator.comparing(place -> place.moved))
                .orElseThrow(() -> new Busy(PAUSE));
        taken.remove(standing);
        standing.cut.run();
    }

    /** One that is taken. */
    final class Place implements AutoCloseable {
        private final String network;
        private final Runnable cut;
        private Instant moved;
        private long sinceThen;

        private Place(String network, Runnable cut, Instant moved) {
            this.network = network;
            this.cut = cut;
            this.moved = moved;
        }

        /** That so many bytes more have gone to the reader. */
        void move(int bytes) {
            synchronized (SeriesPlaces.this) {
                sinceThen += bytes;
                if (sinceThen >= STEP) {
                    sinceThen = 0;
                    moved = clock.instant();
                }
            }
        }

        /** Leaves it; one that was taken over already is left alone. */
        @Override
        public void close() {
            synchronized (SeriesPlaces.this) {
                taken.remove(this);
            }
        }
    }
}
