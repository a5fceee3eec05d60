package groundbass.web.view;

import groundbass.audience.student.OpenSession;
import java.time.Instant;

/**
 * A place where somebody is signed in, in a list of theirs.
 *
 * @param number names it in a form
 * @param device a key of the message bundles
 */
public record SessionRow(String number, String device, Instant since, Instant seen, boolean here) {
    public static SessionRow of(OpenSession session) {
        return new SessionRow(
                session.number(), session.device().key(), session.createdAt(), session.seenAt(), session.here());
    }
}
