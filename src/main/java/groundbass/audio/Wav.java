package groundbass.audio;

import groundbass.signal.Sound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** RIFF WAVE files of 16-bit samples (Multimedia Programming Interface and Data Specifications 1.0, 1991). */
public final class Wav {
    private static final int HEADER = 44;
    private static final short PCM = 1;

    private Wav() {}

    /** @throws IllegalArgumentException if the sound is too long for the form's 32-bit sizes */
    public static void write(Sound sound, OutputStream out) throws IOException {
        out.write(header(sound));
        var pcm = new Pcm(sound);
        for (byte[] bytes = pcm.next(); bytes.length > 0; bytes = pcm.next()) {
            out.write(bytes);
        }
    }

    /** The whole file in memory, for short sounds. */
    public static byte[] bytes(Sound sound) {
        var out = new ByteArrayOutputStream();
        try {
            write(sound, out);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toByteArray();
    }

    private static byte[] header(Sound sound) {
        int frame = sound.channels() * Pcm.BYTES_PER_SAMPLE;
        long data = sound.frames() * frame;
        if (data > Integer.MAX_VALUE - HEADER) {
            throw new IllegalArgumentException("too long for one file: " + sound.frames() + " frames");
        }
        int rate = sound.rate().hertz();
        return ByteBuffer.allocate(HEADER)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(letters("RIFF"))
                .putInt((int) data + HEADER - 8)
                .put(letters("WAVEfmt "))
                .putInt(16)
                .putShort(PCM)
                .putShort((short) sound.channels())
                .putInt(rate)
                .putInt(rate * frame)
                .putShort((short) frame)
                .putShort((short) (8 * Pcm.BYTES_PER_SAMPLE))
                .put(letters("data"))
                .putInt((int) data)
                .array();
    }

    private static byte[] letters(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
