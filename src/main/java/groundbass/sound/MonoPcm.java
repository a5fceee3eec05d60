package groundbass.sound;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** One channel of 16-bit samples, as files hold them. The samples are not copied; nobody changes them. */
@SuppressWarnings("ArrayRecordComponent")
public record MonoPcm(short[] samples) {
    private static final int FULL_SCALE = 32_767;

    /** Rounded after {@code gain}, and kept in range. */
    public static MonoPcm of(float[] samples, double gain) {
        var rounded = new short[samples.length];
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = (short) Math.round(Math.max(-1, Math.min(1, samples[i] * gain)) * FULL_SCALE);
        }
        return new MonoPcm(rounded);
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
