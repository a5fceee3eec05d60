package groundbass.audio;

import io.github.jaredmdobson.concentus.OpusApplication;
import io.github.jaredmdobson.concentus.OpusEncoder;
import io.github.jaredmdobson.concentus.OpusException;
import io.github.jaredmdobson.concentus.OpusSignal;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Opus (RFC 6716) of one channel in Ogg (RFC 7845), encoded by concentus; the only class that knows it. The samples are
 * encoded as if {@value #RATE} of them made a second, whatever their rate: a decoder at that rate gives each of them back,
 * and none is reckoned out of others (rule: small-sound).
 */
public final class Opus {
    /** The rate at which a stream is to be decoded, in hertz. */
    public static final int RATE = 48_000;

    private static final int FRAME = RATE / 50;

    /**
     * How many samples a decoder gives before the first of the sound. The head of the stream says nothing of them
     * (its pre-skip is 0), because decoders differ in what they leave out by themselves.
     */
    public static final int SKIP = FRAME;

    /** RFC 6716 section 3.4: no packet of one frame is longer. */
    private static final int LONGEST_PACKET = 1_275;

    /** The encoder's highest complexity. */
    private static final int MOST_CARE = 10;

    private static final int VERSION = 1;
    private static final int CHANNELS = 1;

    private Opus() {}

    /**
     * A whole stream; of more samples than {@link #SKIP} and the sound's the rest is silence.
     *
     * @param kilobits a second, about
     */
    public static byte[] mono(MonoPcm pcm, int kilobits) {
        try {
            return encoded(pcm, kilobits);
        } catch (OpusException e) {
            throw new IllegalStateException("samples can be encoded", e);
        }
    }

    private static byte[] encoded(MonoPcm pcm, int kilobits) throws OpusException {
        // without the modes for speech, and with the least delay; the analysis of tones is for choosing between modes
        var encoder = new OpusEncoder(RATE, CHANNELS, OpusApplication.OPUS_APPLICATION_RESTRICTED_LOWDELAY);
        encoder.setBitrate(1_000 * kilobits);
        encoder.setUseVBR(true);
        encoder.setUseConstrainedVBR(false); // a stroke takes what it needs, and what dies away hardly anything
        encoder.setComplexity(MOST_CARE);
        encoder.setSignalType(OpusSignal.OPUS_SIGNAL_MUSIC);
        int frames = (SKIP + pcm.frames() + FRAME - 1) / FRAME;
        var samples = new short[frames * FRAME];
        int quiet = SKIP - encoder.getLookahead();
        System.arraycopy(pcm.samples(), 0, samples, quiet, Math.min(pcm.frames(), samples.length - quiet));
        var out = new ByteArrayOutputStream(pcm.frames() / 4);
        var pages = new OggPages(out);
        pages.alone(head());
        pages.alone(comments());
        var packet = new byte[LONGEST_PACKET];
        for (int i = 0; i < frames; i++) {
            int length = encoder.encode(samples, i * FRAME, FRAME, packet, 0, packet.length);
            pages.add(Arrays.copyOf(packet, length), (i + 1L) * FRAME);
        }
        pages.end();
        return out.toByteArray();
    }

    /** RFC 7845 section 5.1. */
    private static byte[] head() {
        return ByteBuffer.allocate(19)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put("OpusHead".getBytes(StandardCharsets.US_ASCII))
                .put((byte) VERSION)
                .put((byte) CHANNELS)
                .putShort((short) 0)
                .putInt(RATE)
                .putShort((short) 0)
                .put((byte) 0)
                .array();
    }

    /** RFC 7845 section 5.2: who made it, and no comments. */
    private static byte[] comments() {
        byte[] maker = "groundbass".getBytes(StandardCharsets.US_ASCII);
        return ByteBuffer.allocate(8 + 4 + maker.length + 4)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put("OpusTags".getBytes(StandardCharsets.US_ASCII))
                .putInt(maker.length)
                .put(maker)
                .putInt(0)
                .array();
    }
}
