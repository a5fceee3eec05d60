package groundbass.audio;

import java.io.IOException;
import java.nio.channels.SeekableByteChannel;

/** The samples of a WAVE file: integers of 8 (unsigned), 16, 24 and 32 bits, floats of 32 and 64. */
final class WavDecoder implements Recording.Decoder {
    private static final int BLOCK = 4_096;

    private final SeekableByteChannel channel;
    private final ByteFile file;
    private final WavFormat format;
    private final long end;
    private long at;

    WavDecoder(SeekableByteChannel channel) throws IOException {
        this.channel = channel;
        this.file = new ByteFile(channel);
        var data = WavFile.data(file);
        this.format = data.format();
        this.at = data.from();
        this.end = data.to();
    }

    @Override
    public float[][] next() throws IOException {
        int count = (int) Math.min(BLOCK, (end - at) / format.blockAlign());
        if (count == 0) {
            return new float[0][0];
        }
        var samples = new float[format.channels()][count];
        int bytes = format.bits() / 8;
        for (int i = 0; i < count; i++) {
            for (float[] channel : samples) {
                channel[i] = sample(bytes);
                at += bytes;
            }
        }
        return samples;
    }

    private float sample(int bytes) throws IOException {
        if (bytes == 1) {
            return file.u8(at) / 128f - 1;
        }
        if (bytes == 8) {
            long low = file.littleEndian32(at);
            return (float) Double.longBitsToDouble(low | file.littleEndian32(at + 4) << 32);
        }
        if (format.isFloat()) {
            return Float.intBitsToFloat((int) file.littleEndian32(at));
        }
        int value = (byte) file.u8(at + bytes - 1);
        for (int i = bytes - 2; i >= 0; i--) {
            value = value << 8 | file.u8(at + i);
        }
        return value / (float) (1L << 8 * bytes - 1);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
