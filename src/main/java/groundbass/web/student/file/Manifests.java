package groundbass.web.student.file;

import groundbass.effort.Heap;
import groundbass.identity.Sha256;
import groundbass.release.ReleaseFile;
import groundbass.store.Blobs;
import groundbass.web.answer.StoredBytes;
import groundbass.web.student.lesson.Remembered;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** What pages play along with, kept compressed: it is the first thing that a player waits for. Thread-safe. */
public final class Manifests {
    private static final int PART_OF_HEAP = 16;

    private final Blobs blobs;
    private final Remembered<Sha256, StoredBytes> known;

    public Manifests(Blobs blobs) {
        this.blobs = blobs;
        this.known = Remembered.within(Heap.partOf(PART_OF_HEAP), StoredBytes::size);
    }

    StoredBytes of(ReleaseFile file) {
        return known.get(file.sha256(), () -> Optional.of(read(file))).orElseThrow();
    }

    private StoredBytes read(ReleaseFile file) {
        try (var in = blobs.open(file.sha256())) {
            return StoredBytes.of(in.readAllBytes(), file.mediaType());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
