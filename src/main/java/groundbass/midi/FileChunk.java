package groundbass.midi;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The chunks of a Standard MIDI File: four letters, a length, the data, all big-endian (rule: hand-built-file). */
final class FileChunk {
    private static final int PARALLEL_TRACKS = 1;

    private FileChunk() {}

    static byte[] of(String letters, byte[] data) {
        return ByteBuffer.allocate(8 + data.length)
                .put(letters.getBytes(StandardCharsets.US_ASCII))
                .putInt(data.length)
                .put(data)
                .array();
    }

    /** A format-1 file of these tracks from a tick on, each lasting until {@code end} at least. */
    static byte[] file(List<Track> tracks, long start, long end) {
        var file = new ByteArrayOutputStream();
        file.writeBytes(header(tracks.size()));
        tracks.forEach(track -> file.writeBytes(track.chunk(start, end)));
        return file.toByteArray();
    }

    private static byte[] header(int tracks) {
        return of(
                "MThd",
                ByteBuffer.allocate(6)
                        .putShort((short) PARALLEL_TRACKS)
                        .putShort((short) tracks)
                        .putShort((short) Ticks.PER_QUARTER)
                        .array());
    }
}
