package groundbass.release.request;

import groundbass.effort.ConcurrencyLimit;
import groundbass.release.Feature;
import groundbass.release.Release;
import groundbass.release.ReleaseBuilder;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.play.ExactStems;
import groundbass.store.Blobs;
import groundbass.store.PassingFiles;
import groundbass.store.PassingFiles.Kept;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What a page plays, without loss, for the few browsers that cannot decode the smaller form: made when one of them asks.
 * These files belong to no release, and lie beside the stored ones: each server keeps so many bytes of them while it runs,
 * and makes again what it has let go. Thread-safe.
 */
public final class StemsOnRequest implements AutoCloseable {
    public static final long MOST_BYTES = 500_000_000L;

    private static final int WAITING = 12;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final ReleaseBuilder builder;
    private final ConcurrencyLimit machine = new ConcurrencyLimit(1, WAITING, PATIENCE);
    private final PassingFiles<Wanted, List<ReleaseFile>> passing;

    private record Wanted(ReleaseId release, ExactStems stems) {}

    /** A manifest or a stem, and where its bytes are. */
    public record Stem(ReleaseFile file, Blobs files) {}

    /**
     * @param folder of nothing else; it need not be there
     * @param most bytes that are kept, such as {@link #MOST_BYTES}
     */
    public StemsOnRequest(ReleaseBuilder builder, Path folder, long most, Clock clock) {
        this.builder = builder;
        this.passing = new PassingFiles<>(folder, most, clock);
    }

    /** Whether a file of this name is made here, if anywhere. */
    public static boolean makes(String name) {
        return ExactStems.of(name).isPresent();
    }

    /** What was made before: {@link #find} makes nothing then. */
    public Optional<Stem> known(Release release, String name) {
        return wanted(release, name).flatMap(wanted -> here(wanted).flatMap(kept -> named(kept, name)));
    }

    /**
     * A manifest of one tempo, or a stem that it names; empty where the release plays no such line or tempo.
     *
     * @throws groundbass.effort.Busy where too many wait for theirs
     */
    public Optional<Stem> find(Release release, String name) {
        return wanted(release, name).flatMap(wanted -> named(kept(release, wanted), name));
    }

    private static Optional<Wanted> wanted(Release release, String name) {
        return ExactStems.of(name)
                .filter(stems -> release.spec().has(Feature.SMALL_SOUND))
                .map(stems -> new Wanted(release.id(), stems));
    }

    private static Optional<Stem> named(Kept<List<ReleaseFile>> kept, String name) {
        return kept.what().stream()
                .filter(file -> file.name().equals(name))
                .findFirst()
                .map(file -> new Stem(file, kept.files()));
    }

    /** Whoever waited may find it made. */
    private Kept<List<ReleaseFile>> kept(Release release, Wanted wanted) {
        return here(wanted).orElseGet(() -> machine.take(() -> here(wanted).orElseGet(() -> made(release, wanted))));
    }

    /** What is damaged, or was cleared away by somebody else, is made again. */
    private Optional<Kept<List<ReleaseFile>>> here(Wanted wanted) {
        var kept = passing.find(wanted);
        if (kept.isPresent() && !isWhole(kept.get())) {
            passing.drop(wanted);
            return Optional.empty();
        }
        return kept;
    }

    private static boolean isWhole(Kept<List<ReleaseFile>> kept) {
        try {
            for (var file : kept.what()) {
                if (!kept.files().exists(file.sha256())) {
                    return false;
                }
            }
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private Kept<List<ReleaseFile>> made(Release release, Wanted wanted) {
        try {
            var kept = passing.keep(wanted, files -> builder.exact(release, wanted.stems(), files));
            if (kept.what().isEmpty()) {
                passing.drop(wanted);
            }
            return kept;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        passing.close();
    }
}
