package groundbass.web.student.file;

import groundbass.effort.Heap;
import groundbass.identity.Sha256;
import groundbass.release.ReleaseFile;
import groundbass.store.Blobs;
import groundbass.web.answer.CachedResponse;
import groundbass.web.student.lesson.TimedCache;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** What pages play along with, kept compressed: it is the first thing that a player waits for. Thread-safe. */
public final class Manifests {
    private static final int PART_OF_HEAP = 16;

    private final Blobs blobs;
    private final TimedCache<Sha256, CachedResponse> known;

    public Manifests(Blobs blobs) {
        this.blobs = blobs;
        this.known = TimedCache.within(Heap.partOf(PART_OF_HEAP), CachedResponse::size);
    }

    CachedResponse of(ReleaseFile file) {
        return of(file, blobs);
    }

    /** @param from where it is kept */
    CachedResponse of(ReleaseFile file, Blobs from) {
        return known.get(file.sha256(), () -> Optional.of(read(file, from))).orElseThrow();
    }

    private static CachedResponse read(ReleaseFile file, Blobs from) {
        try (var in = from.open(file.sha256())) {
            return CachedResponse.of(in.readAllBytes(), file.mediaType());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
