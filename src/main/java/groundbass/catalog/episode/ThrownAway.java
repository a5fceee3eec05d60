package groundbass.catalog.episode;

import java.time.Instant;

/**
 * A draft that was thrown away and can still be fetched back.
 *
 * @param series its title
 * @param at when it was thrown away
 */
public record ThrownAway(EpisodeId id, String series, int number, String title, Instant at) {}
