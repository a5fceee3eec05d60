package groundbass.publishing;

import groundbass.form.Outcome;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * An hour at which an episode is promised.
 *
 * @param local the hour as it was typed
 * @param at the moment it stands for
 */
public record Promise(LocalDateTime local, ZoneId zone, Instant at) {
    /**
     * Works out the moment. An hour that comes twice (clocks going back) means the first; one that never comes (clocks
     * going forward) is refused, as is one that has passed.
     */
    public static Outcome<Promise> of(LocalDateTime local, ZoneId zone, Instant now) {
        var at = at(local, zone);
        if (at.isEmpty()) {
            return Outcome.refused("local", "publishing.problem.hour.skipped", zone.getId());
        }
        if (!at.get().isAfter(now)) {
            return Outcome.refused("local", "publishing.problem.hour.passed");
        }
        return Outcome.done(new Promise(local, zone, at.get()));
    }

    /** The moment of an hour, passed or not; the first of two; empty where the clocks jump over it. */
    static Optional<Instant> at(LocalDateTime local, ZoneId zone) {
        return zone.getRules().getValidOffsets(local).stream().findFirst().map(local::toInstant);
    }

    /** This very moment. */
    public static Promise now(ZoneId zone, Instant now) {
        return new Promise(LocalDateTime.ofInstant(now, zone), zone, now);
    }
}
