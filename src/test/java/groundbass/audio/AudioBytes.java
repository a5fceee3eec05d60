package groundbass.audio;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import javax.sound.sampled.AudioFormat;

/** Recordings built byte by byte as the standards lay them out, and one by an encoder that is not ours. */
public final class AudioBytes {
    private AudioBytes() {}

    /** RIFF/WAVE (IBM and Microsoft 1991, chapter 3): a 16-byte fmt chunk and a data chunk of silence. */
    public static byte[] wav(int tag, int channels, int rate, int bits, int dataBytes) {
        return riff(fmt(tag, channels, rate, bits), chunk("data", new byte[dataBytes]));
    }

    static byte[] fmt(int tag, int channels, int rate, int bits) {
        int align = channels * bits / 8;
        return chunk(
                "fmt ",
                little(16)
                        .putShort((short) tag)
                        .putShort((short) channels)
                        .putInt(rate)
                        .putInt(rate * align)
                        .putShort((short) align)
                        .putShort((short) bits)
                        .array());
    }

    /** A chunk: four characters, the size, the data, a zero where the size is odd. */
    static byte[] chunk(String kind, byte[] data) {
        return little(8 + data.length + data.length % 2)
                .put(kind.getBytes(StandardCharsets.US_ASCII))
                .putInt(data.length)
                .put(data)
                .array();
    }

    static byte[] riff(byte[]... chunks) {
        byte[] all = join(chunks);
        return join(chunk("RIFF", join("WAVE".getBytes(StandardCharsets.US_ASCII), all)));
    }

    /** That many frames with this header and nothing else in them; each as long as the header says. */
    public static byte[] mp3(int header, int frameLength, int count) {
        var all = ByteBuffer.allocate(frameLength * count);
        for (int i = 0; i < count; i++) {
            all.putInt(i * frameLength, header);
        }
        return all.array();
    }

    /** An ID3v2.4 tag of this many bytes behind its header (ID3v2.4.0 section 3.1). */
    static byte[] id3(int size, int flags) {
        var tag = ByteBuffer.allocate(10 + size).put("ID3".getBytes(StandardCharsets.US_ASCII));
        tag.put((byte) 4).put((byte) 0).put((byte) flags);
        for (int shift = 21; shift >= 0; shift -= 7) {
            tag.put((byte) (size >> shift & 0x7F));
        }
        return tag.array();
    }

    /** A sine of the low E string, encoded at a constant bit rate. */
    public static byte[] encodedMp3(int rate, int channels, int kilobits, int seconds) {
        var format = new AudioFormat(rate, 16, channels, true, false);
        int mode = channels == 1 ? 3 : 0; // MPEG audio mode: single channel, stereo
        var encoder = new de.sciss.jump3r.lowlevel.LameEncoder(format, kilobits, mode, 7, false);
        byte[] pcm = sine(rate, channels, seconds);
        byte[] buffer = new byte[encoder.getPCMBufferSize()];
        var out = new ByteArrayOutputStream();
        for (int at = 0; at < pcm.length; at += buffer.length) {
            int length = Math.min(buffer.length, pcm.length - at);
            out.write(buffer, 0, encoder.encodeBuffer(pcm, at, length, buffer));
        }
        out.write(buffer, 0, encoder.encodeFinish(buffer));
        encoder.close();
        return out.toByteArray();
    }

    static byte[] sine(int rate, int channels, int seconds) {
        var pcm = little(rate * channels * seconds * 2);
        for (int i = 0; i < rate * seconds; i++) {
            short sample = (short) (Math.sin(2 * Math.PI * 41.2 * i / rate) * 12_000);
            for (int channel = 0; channel < channels; channel++) {
                pcm.putShort(sample);
            }
        }
        return pcm.array();
    }

    static byte[] join(byte[]... parts) {
        try (var out = new ByteArrayOutputStream()) {
            for (byte[] part : parts) {
                out.write(part);
            }
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static ByteBuffer little(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }
}
