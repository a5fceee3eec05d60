package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitation;
import groundbass.text.Message;
import java.time.Instant;

/**
 * An invitation that is not answered.
 *
 * @param what  what it offers
 * @param until when its link stops to work
 * @param over  whether it has
 */
public record PendingRow(String id, String email, Message what, Instant until, boolean over) {
    static PendingRow of(Invitation invitation, String title, Instant now) {
        return new PendingRow(
                invitation.id(),
                invitation.email().value(),
                Message.of(invitation.offer().key(), title),
                invitation.expiresAt(),
                invitation.isOver(now));
    }
}
