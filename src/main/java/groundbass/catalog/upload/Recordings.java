package groundbass.catalog.upload;

import groundbass.audio.Recording;
import groundbass.document.UploadId;
import groundbass.listening.Hearing;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Listens to what was uploaded: how loud it is, how its wave looks, what sets in when. No request waits for it. */
public final class Recordings {
    private static final Logger log = LoggerFactory.getLogger(Recordings.class);
    private static final int AT_ONCE = 4;
    private static final int MOST_TRIES = 3;

    private final UploadRepository rows;
    private final Blobs blobs;

    public Recordings(UploadRepository rows, Blobs blobs) {
        this.rows = rows;
        this.blobs = blobs;
    }

    /** One pass: decodes some of what nobody has listened to. Again and again until nothing is left. */
    public void listen() {
        for (var upload : rows.unheard(AT_ONCE)) {
            listen(upload);
        }
    }

    private void listen(Upload upload) {
        int tries = rows.beginHearing(upload.id());
        var heard = tries > MOST_TRIES ? setAside(upload) : heard(upload);
        rows.keepHeard(
                upload.id(),
                heard,
                heard instanceof Heard.Ready ready ? Optional.of(ready.hearing()) : Optional.empty());
    }

    /** What ends the program whenever somebody listens must not do so for ever, nor keep the others waiting. */
    private static Heard setAside(Upload upload) {
        log.error("listening to recording {} has never come to an end; it is set aside", upload.id());
        return new Heard.Broken();
    }

    private Heard heard(Upload upload) {
        try (var recording =
                Recording.open(Files.newByteChannel(blobs.path(upload.blob().sha256())), upload.facts())) {
            var hearing = Hearing.of(recording);
            var blob = blobs.put(HeardJson.course(hearing));
            return new Heard.Ready(hearing.loudness(), blob.sha256());
        } catch (VirtualMachineError e) {
            throw e; // the heap is used up, say: not for us to go on from
        } catch (IOException | RuntimeException | Error e) {
            // the decoders are not ours, and throw what they like at a file that is broken
            log.warn("recording {} cannot be decoded", upload.id(), e);
            return new Heard.Broken();
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
