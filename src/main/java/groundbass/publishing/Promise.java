package groundbass.publishing;

import groundbass.form.Outcome;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;

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
        var offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            return Outcome.refused("local", "publishing.problem.hour.skipped", zone.getId());
        }
        var at = local.toInstant(offsets.get(0));
        if (!at.isAfter(now)) {
            return Outcome.refused("local", "publishing.problem.hour.passed");
        }
        return Outcome.done(new Promise(local, zone, at));
    }

    /** This very moment. */
    public static Promise now(ZoneId zone, Instant now) {
        return new Promise(LocalDateTime.ofInstant(now, zone), zone, now);
    }
}
