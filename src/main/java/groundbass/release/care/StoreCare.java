package groundbass.release.care;

import groundbass.catalog.upload.Uploads;
import groundbass.identity.Sha256;
import groundbass.release.Release;
import groundbass.release.ReleaseBuilder;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import groundbass.store.RandomId;
import groundbass.store.fault.Causes;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks after the stored files: reads them through one after another, a little at each pass, and makes again what is
 * damaged or missing. A release's file comes back from its build specification, what was heard in a recording by listening again; a
 * recording or picture that is gone is lost, and so is what an older version of the renderers made. Not thread-safe.
 */
public final class StoreCare {
    private static final Logger log = LoggerFactory.getLogger(StoreCare.class);
    private static final long BYTES = 64_000_000;
    private static final int FILES = 500;
    private static final int MENDED_AT_ONCE = 20;
    /** A full disk is not tried at each pass: to make a release again is work. */
    private static final Duration PAUSE = Duration.ofMinutes(10);

    private final NamedFiles named;
    private final BrokenFiles broken;
    private final Releases releases;
    private final Uploads uploads;
    private final ReleaseBuilder builder;
    private final Blobs blobs;
    private final Clock clock;
    private final Set<Sha256> tried = new HashSet<>();
    /** How often the disk kept us from making each again. */
    private final Map<Sha256, Integer> hindered = new HashMap<>();

    private Instant notBefore = Instant.MIN;
    /** The digest that was read last; at first a random one, so that a server that is often restarted reads all in time. */
    private String last =
            Sha256.of(RandomId.next().getBytes(StandardCharsets.US_ASCII)).hex();

    public StoreCare(
            NamedFiles named,
            BrokenFiles broken,
            Releases releases,
            Uploads uploads,
            ReleaseBuilder builder,
            Blobs blobs,
            Clock clock) {
        this.named = named;
        this.broken = broken;
        this.releases = releases;
        this.uploads = uploads;
        this.builder = builder;
        this.blobs = blobs;
        this.clock = clock;
    }

    /** Mends what somebody asked for in vain, or a look-through has found. */
    public void mend() {
        blobs.missed().stream().filter(named::contain).forEach(sha256 -> broken.note(sha256, clock.instant()));
        if (clock.instant().isBefore(notBefore)) {
            return;
        }
        for (var sha256 : next()) {
            try {
                mend(sha256);
                hindered.remove(sha256);
            } catch (IOException e) {
                log.error("the stored file {} cannot be made again for now", sha256, e);
                hindered.merge(sha256, 1, Integer::sum);
                notBefore = clock.instant().plus(PAUSE);
                return;
            }
        }
    }

    /** Those first that the disk kept us from least, so that one bad place of it keeps none of the others waiting. */
    private List<Sha256> next() {
        return broken.toMend(MENDED_AT_ONCE + hindered.size()).stream()
                .sorted(Comparator.comparingInt(sha256 -> hindered.getOrDefault(sha256, 0)))
                .limit(MENDED_AT_ONCE)
                .toList();
    }

    /** Reads the next files, at most so many that other readers of the disk do not notice. */
    public void lookThrough() {
        try {
            for (var sha256 : broken.lost(FILES)) {
                forgetIfWhole(sha256);
            }
            var next = named.after(last, FILES);
            last = next.isEmpty() ? "" : read(next).hex();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @return the last that was read */
    private Sha256 read(List<Sha256> files) throws IOException {
        long read = 0;
        for (var sha256 : files) {
            OptionalLong length = lookAt(sha256);
            read += length.orElse(0);
            if (length.isEmpty()) {
                broken.note(sha256, clock.instant());
            }
            if (read >= BYTES) {
                return sha256;
            }
        }
        return files.get(files.size() - 1);
    }

    /** Empty where it is damaged or missing, or lies where the disk cannot be read: the others are looked at all the same. */
    private OptionalLong lookAt(Sha256 sha256) throws IOException {
        try {
            return blobs.verify(sha256);
        } catch (FilesAway e) {
            throw e;
        } catch (IOException e) {
            log.error("the stored file {} cannot be read", sha256, e);
            return OptionalLong.empty();
        }
    }

    /** @throws IOException where the disk fails, which says nothing of the file and is no try */
    private void mend(Sha256 sha256) throws IOException {
        if (forgetIfWhole(sha256)) {
            return;
        }
        if (!named.contain(sha256) || uploads.forgetHearing(sha256)) {
            broken.remove(sha256);
            return;
        }
        var needing = releases.files().needing(sha256);
        if (needing.stream().anyMatch(release -> release.spec().isOfNewerProgram())) {
            return; // a newer server beside this one can make it, and only that
        }
        for (var release : needing) {
            if (restored(release, sha256)) {
                return;
            }
        }
        // the first try may have been cut short by the end of the program
        if (!tried.add(sha256)) {
            log.error("the stored file {} is lost: it cannot be made again", sha256);
            broken.giveUp(sha256);
        }
    }

    private boolean restored(Release release, Sha256 sha256) throws IOException {
        try {
            builder.restore(release);
        } catch (IOException | RuntimeException e) {
            if (isOfTheDisk(e)) {
                throw new IOException("the files of release " + release.id() + " cannot be written or read", e);
            }
            log.error("the files of release {} cannot be made again", release.id(), e);
        }
        return forgetIfWhole(sha256);
    }

    /** Whether a file could not be reached or written, rather than that what a release was made of is gone. */
    private static boolean isOfTheDisk(Exception e) {
        return Causes.of(e)
                .filter(IOException.class::isInstance)
                .findFirst()
                .filter(fault -> !(fault instanceof NoSuchFileException || fault instanceof DamagedFileException))
                .isPresent();
    }

    private boolean forgetIfWhole(Sha256 sha256) throws IOException {
        boolean whole = blobs.exists(sha256);
        if (whole) {
            log.info("the stored file {} is whole again", sha256);
            broken.remove(sha256);
        }
        return whole;
    }
}
