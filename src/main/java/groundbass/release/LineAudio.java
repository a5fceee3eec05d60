package groundbass.release;

import groundbass.audio.Flac;
import groundbass.audio.Id3;
import groundbass.audio.Mp3;
import groundbass.audio.Tags;
import groundbass.groove.Groove;
import groundbass.identity.Sha256;
import groundbass.linetext.LineText;
import groundbass.release.play.LineStems;
import groundbass.release.play.Tape;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.sound.mix.Mastering;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes the audio of one line, each piece once: rendered onto a {@link Tape} for each tempo, from there encoded; what was
 * made for an earlier release is taken from there. Thread-safe. Close it, and its tapes go.
 */
final class LineAudio implements AutoCloseable {
    /**
     * Raise it, beside {@link BuildSpec#RENDERERS}, whenever the same line sounds or is encoded otherwise. What was made
     * under it is used again, so a sheet that is drawn otherwise costs no second recording.
     */
    private static final int VERSION = 5;

    private static final Logger log = LoggerFactory.getLogger(LineAudio.class);

    private final String name;
    private final Line line;
    private final Groove groove;
    private final Blobs blobs;
    private final MadeAudio made;
    private final Map<Integer, Tape> tapes = new ConcurrentHashMap<>();
    private OptionalDouble gain = OptionalDouble.empty();

    /**
     * Encoded audio of so many frames, behind a head of {@code head} bytes, which says what the file is called and may
     * differ from release to release.
     */
    record Encoded(Blob blob, long head, long frames) {}

    /** Writes a sound without the head of its file. */
    private interface Encoder {
        void write(Sound sound, OutputStream out) throws IOException;
    }

    /** @param name the line's name among the release's files */
    LineAudio(String name, Line line, Groove groove, Blobs blobs, MadeAudio made) {
        this.name = name;
        this.line = line;
        this.groove = groove;
        this.blobs = blobs;
        this.made = made;
    }

    String name() {
        return name;
    }

    Line line() {
        return line;
    }

    LineStems.Written stems(int percent) throws IOException {
        var key = key("stems", name, percent);
        var before = made.find(
                key, LineStems.Written.class, written -> written.files().values());
        if (before.isPresent()) {
            return before.get();
        }
        var written = LineStems.write(name, tape(percent), blobs);
        made.keep(key, written);
        return written;
    }

    /** @param rounds how often through the line */
    Blob mp3(PracticeTrack track, int rounds, Tags tags) throws IOException {
        return encoded("mp3", track, rounds, frames -> Id3.of(tags), Mp3::encode);
    }

    Blob flac(PracticeTrack track, int rounds, Tags tags) throws IOException {
        return encoded("flac", track, rounds, frames -> Flac.head(frames, tags), Flac::frames);
    }

    private Blob encoded(String form, PracticeTrack track, int rounds, LongFunction<byte[]> head, Encoder encoder)
            throws IOException {
        var key = key(form, track.sounding().word() + " " + rounds, track.percent());
        var before = made.find(key, Encoded.class, encoded -> List.of(encoded.blob()));
        var encoded = before.isPresent()
                ? copied(before.get(), head)
                : encoded(tape(track.percent()).mix(track.sounding().mix(), rounds), head, encoder);
        made.keep(key, encoded);
        return encoded.blob();
    }

    private Encoded copied(Encoded before, LongFunction<byte[]> head) throws IOException {
        byte[] newHead = head.apply(before.frames());
        var blob = blobs.put(out -> {
            out.write(newHead);
            try (var in = blobs.open(before.blob().sha256())) {
                in.skipNBytes(before.head());
                in.transferTo(out);
            }
        });
        return new Encoded(blob, newHead.length, before.frames());
    }

    private Encoded encoded(Sound sound, LongFunction<byte[]> head, Encoder encoder) throws IOException {
        byte[] newHead = head.apply(sound.frames());
        var blob = blobs.put(out -> {
            out.write(newHead);
            encoder.write(sound, out);
        });
        return new Encoded(blob, newHead.length, sound.frames());
    }

    /** All that the audio depends on. */
    private Sha256 key(String form, String what, int percent) {
        return MadeAudio.key(
                form,
                what,
                Integer.toString(percent),
                Integer.toString(VERSION),
                LineText.print(line),
                groove.toString());
    }

    private Tape tape(int percent) {
        return tapes.computeIfAbsent(percent, this::record);
    }

    private Tape record(int percent) {
        try {
            return Tape.record(line, groove, percent, gain());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private synchronized double gain() {
        if (gain.isEmpty()) {
            gain = OptionalDouble.of(Mastering.gain(line, groove));
        }
        return gain.getAsDouble();
    }

    @Override
    public void close() {
        for (var tape : tapes.values()) {
            try {
                tape.close();
            } catch (IOException e) {
                log.warn("a scratch file stays behind", e);
            }
        }
    }
}
