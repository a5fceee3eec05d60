package groundbass.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** One channel of 16-bit samples, as files hold them. The samples are not copied; nobody changes them. */
@SuppressWarnings("ArrayRecordComponent")
public record MonoPcm(short[] samples) {
    public static final MonoPcm NOTHING = new MonoPcm(new short[0]);
    private static final int FULL_SCALE = 32_767;

    /** Rounded after {@code gain}, and kept in range. */
    public static MonoPcm of(float[] samples, double gain) {
        var rounded = new short[samples.length];
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = rounded(samples[i] * gain);
        }
        return new MonoPcm(rounded);
    }

    static short rounded(double sample) {
        return (short) Math.round(Math.max(-1, Math.min(1, sample)) * FULL_SCALE);
    }

    /** As {@link #bytes} wrote them. */
    public static MonoPcm of(byte[] bytes) {
        var samples = new short[bytes.length / Pcm.BYTES_PER_SAMPLE];
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
        return new MonoPcm(samples);
    }

    public int frames() {
        return samples.length;
    }

    /** Little-endian. */
    public byte[] bytes() {
        var bytes = ByteBuffer.allocate(samples.length * Pcm.BYTES_PER_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        return bytes.array();
    }
}
