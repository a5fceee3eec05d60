package groundbass.audience.colleague;

import groundbass.catalog.educator.EducatorId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Objects;

/**
 * That somebody was invited and has not answered. Once it is accepted or withdrawn it is there no more.
 *
 * @param id names it on pages; it opens nothing
 */
public record Invitation(
        String id, EmailAddress email, Offer offer, EducatorId by, Instant createdAt, Instant expiresAt) {
    public Invitation {
        Objects.requireNonNull(id);
        Objects.requireNonNull(email);
        Objects.requireNonNull(offer);
        Objects.requireNonNull(by);
        Objects.requireNonNull(createdAt);
        Objects.requireNonNull(expiresAt);
    }

    public boolean isOver(Instant now) {
        return !expiresAt.isAfter(now);
    }
}
