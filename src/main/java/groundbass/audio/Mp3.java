package groundbass.audio;

import de.sciss.jump3r.lowlevel.LameEncoder;
import de.sciss.jump3r.mp3.MPEGMode;
import groundbass.signal.Sound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import javax.sound.sampled.AudioFormat;

/** MPEG-1 layer III at a constant rate, usually 128 kbit/s, encoded by jump3r; the only class that knows it. */
public final class Mp3 {
    public static final int KILOBITS_A_SECOND = 128;

    /**
     * 2 is best and slow, 7 fast. On such mixes 7 leaves less noise in every band than 5, the encoder's own middle, which
     * shapes it (measured: by 1 to 5 dB), in four fifths of the time; 9 is three times as fast and leaves 3 to 6 dB more.
     */
    private static final int QUALITY = 7;

    /** By which the encoder multiplies everything at this rate (measured: -0.45 dB). */
    private static final float ENCODERS_GAIN = 0.95f;

    private Mp3() {}

    /**
     * Writes all frames of a sound but the first.
     *
     * @param kilobits a second
     * @return the first frame, which stands before them in a file and is known at the end only
     */
    public static byte[] encode(Sound sound, OutputStream out, int kilobits) throws IOException {
        var encoder = encoder(sound, kilobits);
        var body = new Mp3Body(out);
        try {
            var pcm = new Pcm(sound, 1 / ENCODERS_GAIN);
            byte[] encoded = new byte[encoder.getPCMBufferSize()];
            for (byte[] bytes = pcm.next(); bytes.length > 0; bytes = pcm.next()) {
                encode(encoder, bytes, encoded, body);
            }
            body.write(encoded, 0, encoder.encodeFinish(encoded));
        } finally {
            encoder.close();
        }
        return body.info(sound.frames());
    }

    /** The whole file in memory, for short sounds. */
    public static byte[] bytes(Sound sound) {
        var frames = new ByteArrayOutputStream();
        try {
            var whole = new ByteArrayOutputStream();
            whole.writeBytes(encode(sound, frames, KILOBITS_A_SECOND));
            frames.writeTo(whole);
            return whole.toByteArray();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static LameEncoder encoder(Sound sound, int kilobits) {
        var format = new AudioFormat(sound.rate().hertz(), 8 * Pcm.BYTES_PER_SAMPLE, sound.channels(), true, false);
        var mode = sound.channels() == 1 ? MPEGMode.MONO : MPEGMode.JOINT_STEREO;
        return new LameEncoder(format, kilobits, mode.ordinal(), QUALITY, false);
    }

    private static void encode(LameEncoder encoder, byte[] bytes, byte[] encoded, OutputStream out) throws IOException {
        for (int at = 0; at < bytes.length; at += encoded.length) {
            int count = Math.min(encoded.length, bytes.length - at);
            out.write(encoded, 0, encoder.encodeBuffer(bytes, at, count, encoded));
        }
    }
}
