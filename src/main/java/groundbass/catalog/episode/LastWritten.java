package groundbass.catalog.episode;

import java.time.Instant;

/**
 * A lesson, and when something of it was saved last.
 *
 * @param at of a lesson that nobody wrote in, when it was begun
 */
public record LastWritten(Episode episode, Instant at) {}
