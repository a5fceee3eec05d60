package groundbass.post;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.mapper.Nested;

/**
 * A message as it lies in the outbox.
 *
 * @param attempts how often it was tried
 * @param delivery how it left; empty while it waits
 */
public record OutboxMail(
        MessageId id,
        @Nested Mail message,
        Instant createdAt,
        int attempts,
        Optional<Delivery> delivery,
        Optional<String> lastError) {}
