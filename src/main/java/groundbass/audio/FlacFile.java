package groundbass.audio;

import static groundbass.audio.AudioFinding.refused;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;

/**
 * A FLAC file by RFC 9639: the marker (section 6), metadata blocks of which the first is STREAMINFO (section 8.2), then
 * frames, each beginning with 15 bits of synchronization (section 9.1).
 */
final class FlacFile {
    private static final int MARKER = 4;
    private static final int BLOCK_HEADER = 4;
    private static final int STREAM_INFO = 34;
    private static final int LAST = 0x80;
    private static final int MOST_BLOCKS = 1000;
    private static final int SYNC = 0b111_1111_1111_1100;

    private FlacFile() {}

    static boolean isFlac(ByteFile file) throws IOException {
        return file.says(0, "fLaC");
    }

    static AudioFinding read(ByteFile file) throws IOException {
        if (!file.has(MARKER, BLOCK_HEADER + STREAM_INFO) || (file.u8(MARKER) & ~LAST) != 0) {
            return refused("flac.no-info");
        }
        long frames = firstFrame(file);
        if (!file.has(frames, 2) || (file.u8(frames) << 8 | file.u8(frames + 1)) >> 1 != SYNC) {
            return refused("flac.no-frames");
        }
        // 20 bits of rate, 3 of channels less one, 5 of bits less one, 36 of samples
        long at = MARKER + BLOCK_HEADER + 10L;
        int rate = file.bigEndian32(at) >>> 12;
        int channels = (file.u8(at + 2) >> 1 & 7) + 1;
        long samples = (long) (file.u8(at + 3) & 15) << 32 | Integer.toUnsignedLong(file.bigEndian32(at + 4));
        if (rate == 0 || samples == 0) {
            return refused("flac.no-length");
        }
        int bitRate = (int) Math.max(1, (file.length() - frames) * 8 * rate / samples);
        return new AudioFinding.Audio(
                new AudioFacts(AudioFormat.FLAC, rate, channels, bitRate, AudioFacts.duration(samples, rate)));
    }

    /**
     * What a decoder needs of a file: the marker and STREAMINFO as the only metadata, then the frames. Tags and pictures
     * are told with lengths that a decoder would believe.
     */
    static InputStream sound(SeekableByteChannel channel) throws IOException {
        var file = new ByteFile(channel);
        byte[] head = new byte[MARKER + BLOCK_HEADER + STREAM_INFO];
        for (int i = 0; i < head.length; i++) {
            head[i] = (byte) file.u8(i);
        }
        head[MARKER] = (byte) LAST;
        channel.position(firstFrame(file));
        return new SequenceInputStream(new ByteArrayInputStream(head), Channels.newInputStream(channel));
    }

    private static long firstFrame(ByteFile file) throws IOException {
        long at = MARKER;
        for (int i = 0; i < MOST_BLOCKS && file.has(at, BLOCK_HEADER); i++) {
            int header = file.bigEndian32(at);
            at += BLOCK_HEADER + (header & 0xFF_FFFF);
            if (header < 0) {
                return at;
            }
        }
        return at;
    }
}
