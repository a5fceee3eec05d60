package groundbass.audience.student;

import java.time.Instant;
import java.util.Optional;

/**
 * What a student agreed to, and when.
 *
 * @param wording version of the text that was shown, so that one can tell later what it said
 */
public record Consent(Purpose purpose, String wording, Instant givenAt, Optional<Instant> withdrawnAt) {}
