package groundbass.audio;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.jflac.FLACDecoder;
import org.jflac.util.ByteData;

/** FLAC decoded by jFLAC; the only class that knows it. */
public final class FlacDecoder implements Recording.Decoder {
    private final InputStream in;
    private final FLACDecoder decoder;
    private long decoded;

    /** @param in one whole FLAC stream, which is closed with this decoder */
    public FlacDecoder(InputStream in) throws IOException {
        this.in = new BufferedInputStream(in);
        this.decoder = new FLACDecoder(new EndingStream(this.in));
        try {
            decoder.readMetadata();
        } catch (RuntimeException broken) {
            in.close();
            throw new IOException("broken metadata", broken);
        }
    }

    @Override
    public float[][] next() throws IOException {
        if (isAtItsEnd()) {
            return ended();
        }
        try {
            var frame = decoder.readNextFrame();
            if (frame == null) {
                return ended();
            }
            var samples = split(decoder.decodeFrame(frame, null));
            decoded += samples[0].length;
            return samples;
        } catch (EndingStream.Ended brokenOff) {
            return ended();
        } catch (RuntimeException broken) {
            throw new IOException("a broken frame", broken);
        }
    }

    /** Whether all is decoded that the head tells of. The decoder would look at what follows for ever, where that is a frame. */
    private boolean isAtItsEnd() {
        long told = decoder.getStreamInfo().getTotalSamples();
        return told > 0 && decoder.getSamplesDecoded() >= told;
    }

    /** The decoder passes over what is no frame, so a file whose rest is broken ends early without a word. */
    private float[][] ended() throws IOException {
        long told = decoder.getStreamInfo().getTotalSamples();
        if (decoded < told) {
            throw new IOException("the sound ends after " + decoded + " of " + told + " samples");
        }
        return new float[0][0];
    }

    /** Little-endian, channels interleaved; 8 bits are unsigned. */
    private float[][] split(ByteData data) {
        var info = decoder.getStreamInfo();
        int bytes = (info.getBitsPerSample() + 7) / 8;
        int channels = info.getChannels();
        var samples = new float[channels][data.getLen() / bytes / channels];
        for (int i = 0; i < samples[0].length * channels; i++) {
            samples[i % channels][i / channels] = sample(data.getData(), i * bytes, bytes, info.getBitsPerSample());
        }
        return samples;
    }

    private static float sample(byte[] data, int at, int bytes, int bits) {
        if (bytes == 1) {
            return (data[at] & 0xff) / 128f - 1;
        }
        int value = data[at + bytes - 1];
        for (int i = bytes - 2; i >= 0; i--) {
            value = value << 8 | data[at + i] & 0xff;
        }
        return value / (float) (1L << bits - 1);
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
