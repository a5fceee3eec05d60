package groundbass.publishing;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.series.ReleaseRhythm;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An hour of a series' rhythm.
 *
 * @param local on the clocks of the series' zone
 * @param exists whether clocks show it on that day; one that they jump over cannot be promised
 * @param lesson what is promised for it
 */
public record Slot(LocalDateTime local, boolean exists, Optional<Episode> lesson) {
    /** Whether a lesson can be promised for it. */
    public boolean isFree() {
        return exists && lesson.isEmpty();
    }

    /**
     * The coming hours of a rhythm.
     *
     * @param promised the lessons of the series that wait for their hour, whether it is one of the rhythm or not
     */
    public static List<Slot> coming(ReleaseRhythm rhythm, ZoneId zone, List<Episode> promised, Instant now, int count) {
        var here = LocalDateTime.ofInstant(now, zone);
        return rhythm.from(here.toLocalDate())
                .filter(local -> isToCome(local, zone, now))
                .limit(count)
                .map(local -> of(local, Promise.at(local, zone), promised))
                .toList();
    }

    /** Clocks that go back show an hour once more that has struck; one that they jump over is over when they have. */
    private static boolean isToCome(LocalDateTime local, ZoneId zone, Instant now) {
        return Promise.at(local, zone)
                .map(at -> at.isAfter(now))
                .orElseGet(() -> local.isAfter(LocalDateTime.ofInstant(now, zone)));
    }

    /** @param at the moment that the hour stands for; empty where it is none */
    private static Slot of(LocalDateTime local, Optional<Instant> at, List<Episode> promised) {
        var lesson = promised.stream()
                .filter(episode -> at.isPresent() && hour(episode).equals(at))
                .findFirst();
        return new Slot(local, at.isPresent(), lesson);
    }

    /** Those of the promised lessons whose hour is none of these. */
    public static List<Episode> beside(List<Slot> slots, List<Episode> promised) {
        var others = new ArrayList<>(promised);
        slots.forEach(slot -> slot.lesson().ifPresent(others::remove));
        return others;
    }

    private static Optional<Instant> hour(Episode episode) {
        return episode.state() instanceof EpisodeState.Scheduled scheduled
                ? Optional.of(scheduled.at())
                : Optional.empty();
    }
}
