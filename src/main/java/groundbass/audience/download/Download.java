package groundbass.audience.download;

import groundbass.audience.student.StudentId;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.mapper.Nested;

/**
 * A download record.
 *
 * @param student who, if known
 * @param touchedAt when it was last heard of
 * @param bytesSent all that went over the wire, a range sent twice counted twice
 * @param robot kept apart from what people took
 * @param own taken by an educator at the desk, and counted nowhere
 * @param repeated the second request of one anonymous visitor within a day, not counted again
 */
public record Download(
        DownloadId id,
        @Nested ReleasedFile file,
        Optional<StudentId> student,
        Instant startedAt,
        Instant touchedAt,
        DownloadState state,
        long bytesSent,
        boolean robot,
        boolean own,
        boolean repeated) {
    /** Whether statistics count it. */
    public boolean counts() {
        return !robot && !own && !repeated;
    }
}
