package groundbass.sound;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import net.sourceforge.javaflacencoder.EncodingConfiguration;
import net.sourceforge.javaflacencoder.FLACEncoder;
import net.sourceforge.javaflacencoder.FLACOutputStream;
import net.sourceforge.javaflacencoder.StreamConfiguration;

/**
 * FLAC (RFC 9639) of 16-bit samples, encoded by java-flac-encoder; the only class that knows it. The head of the file is
 * ours, because the encoder can only fill it in by going back, which a stream does not allow.
 */
public final class Flac {
    private static final int BLOCK = 4_096;
    private static final int HEAD = 42;

    /** The encoder's own head and an empty block behind it. */
    private static final int ENCODERS_HEAD = HEAD + 44;

    private static final int STREAM_INFO = 34;
    private static final int LAST = 0x80;

    /** Higher orders take longer and save next to nothing on a bass. */
    private static final int HIGHEST_ORDER = 8;

    private Flac() {}

    /** A whole stream of one channel. */
    public static byte[] mono(MonoPcm pcm) {
        var out = new ByteArrayOutputStream(pcm.frames());
        try {
            out.write(head(1, pcm.frames()));
            var encoder = encoder(1, out);
            var block = new int[BLOCK];
            for (int from = 0; from < pcm.frames(); from += BLOCK) {
                int count = Math.min(BLOCK, pcm.frames() - from);
                for (int i = 0; i < count; i++) {
                    block[i] = pcm.samples()[from + i];
                }
                encode(encoder, block, count, from + count == pcm.frames());
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toByteArray();
    }

    private static void encode(FLACEncoder encoder, int[] block, int frames, boolean last) throws IOException {
        encoder.addSamples(block, frames);
        encoder.encodeSamples(frames, last);
    }

    private static FLACEncoder encoder(int channels, OutputStream out) throws IOException {
        var encoder = new FLACEncoder();
        var stream = new StreamConfiguration();
        stream.setChannelCount(channels);
        stream.setSampleRate(SampleRate.CD.hertz());
        stream.setBitsPerSample(8 * Pcm.BYTES_PER_SAMPLE);
        stream.setMinBlockSize(BLOCK);
        stream.setMaxBlockSize(BLOCK);
        var encoding = new EncodingConfiguration();
        encoding.setMinLPCOrder(1);
        encoding.setMaxLPCOrder(HIGHEST_ORDER);
        encoder.setStreamConfiguration(stream);
        encoder.setEncodingConfiguration(encoding);
        encoder.setOutputStream(new WithoutHead(out));
        encoder.openFLACStream();
        return encoder;
    }

    /** The marker and the STREAMINFO block (section 8.2); frame sizes and the digest are left unknown, as it allows. */
    private static byte[] head(int channels, long frames) {
        long rest = (long) SampleRate.CD.hertz() << 44
                | (long) (channels - 1) << 41
                | (8L * Pcm.BYTES_PER_SAMPLE - 1) << 36
                | frames;
        return ByteBuffer.allocate(HEAD)
                .put("fLaC".getBytes(StandardCharsets.US_ASCII))
                .putInt(LAST << 24 | STREAM_INFO)
                .putShort((short) BLOCK)
                .putShort((short) BLOCK)
                .putInt(0)
                .putShort((short) 0)
                .putLong(rest)
                .array();
    }

    /** Passes on what the encoder writes after its own head. */
    private static final class WithoutHead implements FLACOutputStream {
        private final OutputStream out;
        private long size;

        WithoutHead(OutputStream out) {
            this.out = out;
        }

        @Override
        public long seek(long position) {
            return size;
        }

        @Override
        public int write(byte[] data, int offset, int count) throws IOException {
            int skipped = (int) Math.min(count, Math.max(0, ENCODERS_HEAD - size));
            out.write(data, offset + skipped, count - skipped);
            size += count;
            return count;
        }

        @Override
        public long size() {
            return size;
        }

        @Override
        public void write(byte data) throws IOException {
            write(new byte[] {data}, 0, 1);
        }

        @Override
        public boolean canSeek() {
            return false;
        }

        @Override
        public long getPos() {
            return size;
        }
    }
}
