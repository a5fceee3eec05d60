package groundbass.catalog.upload;

import groundbass.audio.Recording;
import groundbass.document.UploadId;
import groundbass.listening.Hearing;
import groundbass.store.Blobs;
import groundbass.store.fault.DamagedFileException;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Listens to what was uploaded: how loud it is, how its wave looks, what sets in when. No request waits for it. */
public final class Recordings {
    private static final Logger log = LoggerFactory.getLogger(Recordings.class);
    private static final int AT_ONCE = 4;
    private static final int MOST_TRIES = 3;

    private final UploadRepository rows;
    private final Blobs blobs;
    /** How often the disk kept us from each. */
    private final Map<UploadId, Integer> hindered = new ConcurrentHashMap<>();

    public Recordings(UploadRepository rows, Blobs blobs) {
        this.rows = rows;
        this.blobs = blobs;
    }

    /**
     * One pass: decodes some of what nobody has listened to. Again and again until nothing is left; where the disk fails,
     * the pass ends, and the next begins with others.
     */
    public void listen() {
        for (var upload : next()) {
            if (!isListenedTo(upload)) {
                return;
            }
        }
    }

    private List<Upload> next() {
        return rows.unheard(AT_ONCE + hindered.size()).stream()
                .sorted(Comparator.comparingInt(upload -> hindered.getOrDefault(upload.id(), 0)))
                .limit(AT_ONCE)
                .toList();
    }

    /** @return whether something can be said of it now */
    private boolean isListenedTo(Upload upload) {
        int tries = rows.beginHearing(upload.id());
        try {
            var heard = tries > MOST_TRIES ? setAside(upload) : heard(upload);
            rows.keepHeard(
                    upload.id(),
                    heard,
                    heard instanceof Heard.Ready ready ? Optional.of(ready.hearing()) : Optional.empty());
            hindered.remove(upload.id());
            return true;
        } catch (IOException e) {
            // a full disk, or one that is away, says nothing of the recording, and is no try either
            rows.takeBackTry(upload.id());
            log.warn("recording {} cannot be listened to for now", upload.id(), e);
            hindered.merge(upload.id(), 1, Integer::sum);
            return false;
        }
    }

    /** What ends the program whenever somebody listens must not do so for ever, nor keep the others waiting. */
    private static Heard setAside(Upload upload) {
        log.error("listening to recording {} has never come to an end; it is set aside", upload.id());
        return new Heard.Broken();
    }

    /** @throws IOException where the files cannot be reached or written, which is no fault of the recording */
    private Heard heard(Upload upload) throws IOException {
        var hearing = decoded(upload);
        if (hearing.isEmpty()) {
            return new Heard.Broken();
        }
        var blob = blobs.put(HeardJson.course(hearing.get()));
        return new Heard.Ready(hearing.get().loudness(), blob.sha256());
    }

    private Optional<Hearing> decoded(Upload upload) throws IOException {
        try (var local = blobs.local(upload.blob().sha256());
                var file = Files.newByteChannel(local.path())) {
            return decoded(upload, file);
        } catch (NoSuchFileException | DamagedFileException e) {
            log.warn("recording {} is gone", upload.id(), e);
            return Optional.empty();
        }
    }

    private Optional<Hearing> decoded(Upload upload, SeekableByteChannel file) throws IOException {
        try (var recording = Recording.open(file, upload.facts())) {
            return Optional.of(Hearing.of(recording));
        } catch (VirtualMachineError e) {
            throw e; // the heap is used up, say: not for us to go on from
        } catch (IOException | RuntimeException | Error e) {
            // the decoders are not ours, and throw what they like at a file that is broken; where it is the disk that
            // fails, reading the file through fails as well
            demandGoingOn(upload, e);
            blobs.verify(upload.blob().sha256());
            log.warn("recording {} cannot be decoded", upload.id(), e);
            return Optional.empty();
        }
    }

    /** A server that is stopped breaks off who listens, which says nothing of the recording. */
    private static void demandGoingOn(Upload upload, Throwable e) throws IOException {
        if (Thread.currentThread().isInterrupted() || e instanceof ClosedByInterruptException) {
            var brokenOff = new InterruptedIOException("listening to recording " + upload.id() + " was broken off");
            brokenOff.initCause(e);
            throw brokenOff;
        }
    }

    public Heard heard(UploadId id) {
        return rows.heard(id);
    }

    /** The course of a recording; empty while nobody has listened to it, or where it is broken. */
    public Optional<Hearing> hearing(UploadId id) {
        if (!(heard(id) instanceof Heard.Ready ready)) {
            return Optional.empty();
        }
        try (var in = blobs.open(ready.hearing())) {
            return Optional.of(HeardJson.course(in.readAllBytes(), ready.loudness()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
