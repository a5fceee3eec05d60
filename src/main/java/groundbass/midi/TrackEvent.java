package groundbass.midi;

import java.util.Comparator;

/** One event of a track with its bytes after the delta time. */
record TrackEvent(long tick, Rank rank, byte[] bytes) {
    static final Comparator<TrackEvent> ORDER =
            Comparator.comparingLong(TrackEvent::tick).thenComparing(TrackEvent::rank);

    /** What comes first at one tick, so that a note is ended before it is struck again with its settings made (rule: event-order). */
    enum Rank {
        META,
        SETTING,
        NOTE_OFF,
        NOTE_ON
    }

    TrackEvent {
        if (tick < 0) {
            throw new IllegalArgumentException("before the start: " + tick);
        }
    }
}
