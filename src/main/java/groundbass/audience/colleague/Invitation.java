package groundbass.audience.colleague;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * That somebody was invited and has not answered. Once it is accepted or withdrawn it is there no more.
 *
 * @param id names it on pages; it opens nothing
 * @param to who answers it at their desk; empty where whoever has the link does, since the address had no desk, or one whose
 *     educator typed the address and has not proved to read it
 */
public record Invitation(
        String id,
        EmailAddress email,
        Optional<EducatorId> to,
        Offer offer,
        EducatorId by,
        Instant createdAt,
        Instant expiresAt) {
    public Invitation {
        Objects.requireNonNull(id);
        Objects.requireNonNull(email);
        Objects.requireNonNull(to);
        Objects.requireNonNull(offer);
        Objects.requireNonNull(by);
        Objects.requireNonNull(createdAt);
        Objects.requireNonNull(expiresAt);
    }

    /** Whether this educator answers it at their desk. */
    public boolean isTo(EducatorId who) {
        return to.filter(who::equals).isPresent();
    }

    /** Whether this educator may accept it who has its link: it is to them, or was sent to their address. */
    public boolean isLinkOf(Educator who) {
        return to.map(who.id()::equals).orElseGet(() -> who.email().equals(email.value()));
    }

    public boolean isOver(Instant now) {
        return !expiresAt.isAfter(now);
    }
}
