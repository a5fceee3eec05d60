package groundbass.catalog.episode;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/** Where an episode stands on its way to the students. */
public sealed interface EpisodeState {
    /** Being written. */
    record Unscheduled() implements EpisodeState {}

    /**
     * Promised for an hour.
     *
     * @param at    the instant at which it goes live
     * @param zone  the zone in which the hour was promised
     * @param local the hour as it was typed, so that it can be worked out anew when the zone's rules change
     * @param madeAt when it was promised
     * @param firstRelease the number of the release that was made for it first
     */
    record Scheduled(Instant at, ZoneId zone, LocalDateTime local, Instant madeAt, int firstRelease)
            implements EpisodeState {
        public Scheduled {
            Objects.requireNonNull(at);
            Objects.requireNonNull(zone);
            Objects.requireNonNull(local);
            Objects.requireNonNull(madeAt);
        }

        /** Whether the hour had come already when it was promised: it goes out as soon as it can. */
        public boolean isAtOnce() {
            return !at.isAfter(madeAt);
        }

        /** Whether the hour has come. */
        public boolean isDue(Instant now) {
            return !at.isAfter(now);
        }
    }

    /**
     * Brought out; number and slug stay as they are.
     *
     * @param withdrawal that it was taken back, and is not to be had now
     */
    record Published(Instant firstAt, Optional<Withdrawal> withdrawal) implements EpisodeState {
        public Published {
            Objects.requireNonNull(firstAt);
            Objects.requireNonNull(withdrawal);
        }
    }
}
