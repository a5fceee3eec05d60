package groundbass.release;

import groundbass.audio.Flac;
import groundbass.audio.Id3;
import groundbass.audio.Mp3;
import groundbass.audio.Tags;
import groundbass.groove.Groove;
import groundbass.identity.Sha256;
import groundbass.linetext.LineText;
import groundbass.release.play.LineStems;
import groundbass.release.play.StemForm;
import groundbass.release.play.Tape;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.store.temporary.Scratch;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
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
    private static final int VERSION = 10;

    private static final Logger log = LoggerFactory.getLogger(LineAudio.class);

    private final String name;
    private final Line line;
    private final Line unnamed;
    private final Groove groove;
    private final Blobs blobs;
    private final MadeAudio made;
    private final Map<Integer, Tape> tapes = new ConcurrentHashMap<>();
    private volatile boolean closed;

    /**
     * Encoded audio of so many frames, behind a head of {@code head} bytes, which says what the file is called and may
     * differ from release to release.
     *
     * @param told what the encoder told for the head, as hexadecimal digits
     */
    record Encoded(Blob blob, long head, long frames, String told) {}

    /** How a sound becomes a file. */
    private interface Form {
        /** Writes a sound without the head of its file; gives what the head has to tell of it. */
        byte[] encode(Sound sound, OutputStream out) throws IOException;

        byte[] head(long frames, byte[] told);
    }

    /** @param name the line's name among the release's files */
    LineAudio(String name, Line line, Groove groove, Blobs blobs, MadeAudio made) {
        this.name = name;
        this.line = line;
        this.unnamed = new Line(line.header().withTitle("").withComposer("").withRights(""), line.bars());
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

    LineStems.Written stems(int percent, StemForm form) throws IOException {
        return made.findOrKeep(
                key(form.name(), name, percent),
                LineStems.Written.class,
                written -> written.files().values(),
                () -> LineStems.write(name, tape(percent), form, blobs));
    }

    /** Its stems without loss, somewhere else than where what was made stays. */
    LineStems.Written exactStems(int percent, Blobs into) throws IOException {
        return LineStems.write(name, tape(percent), StemForm.EXACT, into);
    }

    /** @param rounds how often through the line */
    Blob mp3(PracticeTrack track, int rounds, Tags tags) throws IOException {
        return encoded("mp3-" + track.sounding().kilobits(), track, rounds, new Form() {
            @Override
            public byte[] encode(Sound sound, OutputStream out) throws IOException {
                return Mp3.encode(sound, out, track.sounding().kilobits());
            }

            @Override
            public byte[] head(long frames, byte[] told) {
                byte[] tag = Id3.of(tags);
                return ByteBuffer.allocate(tag.length + told.length)
                        .put(tag)
                        .put(told)
                        .array();
            }
        });
    }

    Blob flac(PracticeTrack track, int rounds, Tags tags) throws IOException {
        return encoded("flac", track, rounds, new Form() {
            @Override
            public byte[] encode(Sound sound, OutputStream out) throws IOException {
                return Flac.frames(sound, out);
            }

            @Override
            public byte[] head(long frames, byte[] told) {
                return Flac.head(frames, told, tags);
            }
        });
    }

    private Blob encoded(String name, PracticeTrack track, int rounds, Form form) throws IOException {
        var key = key(name, track.sounding().word() + " " + rounds, track.percent());
        var before = made.find(key, Encoded.class, encoded -> List.of(encoded.blob()));
        var encoded = before.isPresent()
                ? copied(before.get(), form)
                : encoded(tape(track.percent()).mix(track.sounding().mix(), rounds), form);
        made.keep(key, encoded);
        return encoded.blob();
    }

    private Encoded copied(Encoded before, Form form) throws IOException {
        byte[] head = form.head(before.frames(), HexFormat.of().parseHex(before.told()));
        var blob = blobs.put(out -> {
            out.write(head);
            try (var in = blobs.open(before.blob().sha256())) {
                in.skipNBytes(before.head());
                in.transferTo(out);
            }
        });
        return new Encoded(blob, head.length, before.frames(), before.told());
    }

    /** The head comes first in a file and is known last, so all else waits for it in a scratch file. */
    private Encoded encoded(Sound sound, Form form) throws IOException {
        try (var scratch = Scratch.open()) {
            byte[] told = scratch.write(out -> form.encode(sound, out));
            byte[] head = form.head(sound.frames(), told);
            var blob = blobs.put(out -> {
                out.write(head);
                scratch.copyTo(out);
            });
            return new Encoded(blob, head.length, sound.frames(), HexFormat.of().formatHex(told));
        }
    }

    /** All that the audio depends on: of the line everything but what it is called and whose it is. */
    private Sha256 key(String form, String what, int percent) {
        return MadeAudio.key(
                form,
                what,
                Integer.toString(percent),
                Integer.toString(VERSION),
                LineText.print(unnamed),
                groove.toString());
    }

    /** A step beside one that failed may still be at work when this is closed; it leaves no tape behind. */
    private Tape tape(int percent) {
        var tape = tapes.computeIfAbsent(percent, this::record);
        if (closed) {
            close();
        }
        return tape;
    }

    private Tape record(int percent) {
        try {
            return Tape.record(line, groove, percent);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        closed = true;
        for (var tape : tapes.values()) {
            try {
                tape.close();
            } catch (IOException e) {
                log.warn("a scratch file stays behind", e);
            }
        }
    }
}
