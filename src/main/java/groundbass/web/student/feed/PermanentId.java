package groundbass.web.student.feed;

import groundbass.identity.TextValue;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** What names a thing in feeds and calendars for good: made from its id, and so the same wherever the site moves. */
final class PermanentId {
    private PermanentId() {}

    /** A URN as RFC 4287 section 4.2.6 asks for; the UUID is of version 3 (RFC 9562 section 5.3). */
    static String of(TextValue id) {
        byte[] name = ("groundbass " + id.value()).getBytes(StandardCharsets.UTF_8);
        return "urn:uuid:" + UUID.nameUUIDFromBytes(name);
    }
}
