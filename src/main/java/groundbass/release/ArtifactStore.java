package groundbass.release;

import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntPredicate;

/** Keeps the files of one build, and tells how many of its steps are done. Thread-safe. */
final class ArtifactStore {
    private final Blobs blobs;
    private final IntPredicate progress;
    private final AtomicInteger done = new AtomicInteger();

    /** Something that takes a while. */
    interface Step<T> {
        T make() throws IOException;
    }

    /** @param progress told how many steps are done; says whether the build goes on */
    ArtifactStore(Blobs blobs, IntPredicate progress) {
        this.blobs = blobs;
        this.progress = progress;
    }

    <T> T step(Step<T> step) {
        try {
            var made = step.make();
            if (!progress.test(done.incrementAndGet())) {
                throw new IllegalStateException("nobody waits for this build any more");
            }
            return made;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    ReleaseFile keep(Artifact file) {
        try {
            return ReleaseFile.of(file.name(), file.role(), file.mediaType(), blobs.put(file.bytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
