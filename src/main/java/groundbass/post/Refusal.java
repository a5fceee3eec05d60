package groundbass.post;

import java.time.Instant;

/**
 * That an address was refused for good.
 *
 * @param reply the mail server's own words
 */
public record Refusal(Instant refusedAt, String reply) {}
