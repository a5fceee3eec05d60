package groundbass.audience.student;

import java.time.Instant;
import java.util.Optional;

/** That somebody asked for a link to sign in. */
public record SignInRequest(Instant askedAt, Instant expiresAt, Optional<Instant> usedAt) {}
