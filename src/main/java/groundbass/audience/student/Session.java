package groundbass.audience.student;

import java.time.Instant;

/** Somebody signed in, until the given instant unless they come back earlier. */
public record Session(Person person, Instant createdAt, Instant expiresAt) {}
