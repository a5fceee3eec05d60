package groundbass.audio;

import groundbass.signal.Sound;
import java.util.Arrays;

/** Sound as 16-bit samples, little-endian, channels interleaved: what WAV holds and the MP3 encoder takes. */
final class Pcm {
    static final int BYTES_PER_SAMPLE = 2;
    private static final int FULL_SCALE = 32_767;
    private static final int FRAMES = 4_096;

    private final Sound sound;
    private final float[][] block;
    private final byte[] bytes;
    private final float gain;

    Pcm(Sound sound) {
        this(sound, 1);
    }

    /** @param gain by which everything is multiplied */
    Pcm(Sound sound, float gain) {
        this.sound = sound;
        this.gain = gain;
        this.block = new float[sound.channels()][FRAMES];
        this.bytes = new byte[FRAMES * sound.channels() * BYTES_PER_SAMPLE];
    }

    /** What comes next; empty at the end. */
    byte[] next() {
        int frames = sound.read(block);
        int at = 0;
        for (int i = 0; i < frames; i++) {
            for (float[] channel : block) {
                int sample = Math.round(Math.max(-1, Math.min(1, channel[i] * gain)) * FULL_SCALE);
                bytes[at++] = (byte) sample;
                bytes[at++] = (byte) (sample >> 8);
            }
        }
        return Arrays.copyOf(bytes, at);
    }
}
