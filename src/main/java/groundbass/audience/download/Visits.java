package groundbass.audience.download;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The last download of each file by each anonymous visitor: in memory alone and for no longer than a day, like the
 * {@link VisitorKey} that made the digests, so that nothing about a visitor ever reaches a disk. Of more downloads in a
 * day than {@value #MOST} (25 MB of memory) the oldest are forgotten, and a repeated one of those is counted again.
 * Thread-safe.
 */
final class Visits {
    static final int MOST = 100_000;

    /** A file asked for by a visitor, told by the visitor's digest. */
    record Visit(String visitor, String release, String name) {
        Visit {
            Objects.requireNonNull(visitor);
            Objects.requireNonNull(release);
            Objects.requireNonNull(name);
        }

        static Optional<Visit> of(FileRequest request, VisitorKey key) {
            ReleasedFile file = request.file();
            return request.requester().visitor(key).map(visitor -> new Visit(visitor, file.release(), file.name()));
        }
    }

    /** Which record, and when it was made. */
    private record Seen(DownloadId id, Instant at) {}

    /** The oldest first. */
    private final Map<Visit, Seen> seen = new LinkedHashMap<>();

    synchronized void remember(Visit visit, DownloadId id, Instant now) {
        seen.remove(visit);
        seen.put(visit, new Seen(id, now));
        if (seen.size() > MOST) seen.remove(seen.keySet().iterator().next());
    }

    /** The newest download of this visit that began after {@code since}. */
    synchronized Optional<DownloadId> latest(Visit visit, Instant since) {
        return Optional.ofNullable(seen.get(visit))
                .filter(found -> found.at().isAfter(since))
                .map(Seen::id);
    }

    synchronized void forget(Instant until) {
        seen.values().removeIf(found -> !found.at().isAfter(until));
    }
}
