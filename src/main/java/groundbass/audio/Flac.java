package groundbass.audio;

import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
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

    /** The encoder's own head and an empty block behind it. */
    private static final int ENCODERS_HEAD = 42 + 44;

    private static final int STREAM_INFO = 34;
    private static final int LAST = 0x80;

    /** Higher orders take longer and save next to nothing on a bass. */
    private static final int HIGHEST_ORDER = 8;

    /** The encoder stumbles over a last block of fewer samples than its predictors look back. */
    private static final int SHORTEST_LAST = 32;

    private Flac() {}

    /** How many samples a block of a stream of so many frames has, so that the last one is long enough. */
    static int block(long frames) {
        int block = BLOCK;
        while (frames > SHORTEST_LAST && frames % block > 0 && frames % block < SHORTEST_LAST) {
            block -= SHORTEST_LAST;
        }
        return block;
    }

    /** A whole stream of one channel. */
    public static byte[] mono(MonoPcm pcm) {
        var out = new ByteArrayOutputStream(pcm.frames());
        int size = block(pcm.frames());
        out.writeBytes(FlacHead.plain(1, pcm.frames(), size, md5().digest(pcm.bytes())));
        var block = new int[size];
        try {
            var encoder = encoder(1, pcm.frames(), out);
            for (int from = 0; from < pcm.frames(); from += size) {
                int count = Math.min(size, pcm.frames() - from);
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

    /**
     * What a file of two channels begins with: {@link #frames} of a sound of so many frames follow.
     *
     * @param digest what they told
     */
    public static byte[] head(long frames, byte[] digest, Tags tags) {
        return FlacHead.tagged(2, frames, block(frames), digest, tags);
    }

    /**
     * The frames of a whole sound, without what stands before them in a file.
     *
     * @return the digest of its samples, which the head tells
     */
    public static byte[] frames(Sound sound, OutputStream out) throws IOException {
        var digest = md5();
        int channels = sound.channels();
        int size = block(sound.frames());
        var encoder = encoder(channels, sound.frames(), out);
        var read = new float[channels][size];
        var block = new int[size * channels];
        for (long done = 0; done < sound.frames(); ) {
            int count = full(sound, read);
            for (int i = 0; i < count * channels; i++) {
                block[i] = MonoPcm.rounded(read[i % channels][i / channels]);
            }
            done += count;
            digest.update(bytes(block, count * channels));
            encode(encoder, block, count, done == sound.frames());
        }
        return digest.digest();
    }

    private static byte[] bytes(int[] samples, int count) {
        var bytes = ByteBuffer.allocate(count * Pcm.BYTES_PER_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < count; i++) {
            bytes.putShort((short) samples[i]);
        }
        return bytes.array();
    }

    private static MessageDigest md5() {
        try {
            return MessageDigest.getInstance(
                    "MD5"); // RFC 9639, section 8.2: it finds faults of a file, and keeps no secret
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has MD5", impossible);
        }
    }

    /** A block is full, but for the last. */
    private static int full(Sound sound, float[][] block) {
        int count = sound.read(block);
        if (count == 0) {
            throw new IllegalStateException("a sound ended before its frames");
        }
        return count;
    }

    private static void encode(FLACEncoder encoder, int[] block, int frames, boolean last) throws IOException {
        encoder.addSamples(block, frames);
        encoder.encodeSamples(frames, last);
    }

    private static FLACEncoder encoder(int channels, long frames, OutputStream out) throws IOException {
        var encoder = new FLACEncoder();
        var stream = new StreamConfiguration();
        stream.setChannelCount(channels);
        stream.setSampleRate(SampleRate.CD.hertz());
        stream.setBitsPerSample(8 * Pcm.BYTES_PER_SAMPLE);
        stream.setMinBlockSize(block(frames));
        stream.setMaxBlockSize(block(frames));
        var encoding = new EncodingConfiguration();
        encoding.setMinLPCOrder(HIGHEST_ORDER);
        encoding.setMaxLPCOrder(HIGHEST_ORDER);
        if (frames <= SHORTEST_LAST) {
            encoding.setSubframeType(EncodingConfiguration.SubframeType.VERBATIM);
        }
        encoder.setStreamConfiguration(stream);
        encoder.setEncodingConfiguration(encoding);
        encoder.setOutputStream(new WithoutHead(out));
        encoder.openFLACStream();
        return encoder;
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
