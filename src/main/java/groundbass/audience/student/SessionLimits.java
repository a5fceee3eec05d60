package groundbass.audience.student;

import java.time.Duration;
import java.time.Instant;

/**
 * How long somebody stays signed in: {@code idle} after the last request, and never beyond {@code longest}. An educator
 * can publish and delete, so theirs are short.
 */
record SessionLimits(Duration idle, Duration longest) {
    private static final SessionLimits STUDENT = new SessionLimits(Duration.ofDays(30), Duration.ofDays(365));
    private static final SessionLimits EDUCATOR = new SessionLimits(Duration.ofHours(12), Duration.ofDays(7));

    static SessionLimits of(Person person) {
        return person.either(student -> STUDENT, educator -> EDUCATOR);
    }

    Instant end(Instant createdAt, Instant seenAt) {
        Instant byIdling = seenAt.plus(idle);
        Instant atLast = createdAt.plus(longest);
        return byIdling.isBefore(atLast) ? byIdling : atLast;
    }
}
