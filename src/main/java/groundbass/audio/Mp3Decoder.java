package groundbass.audio;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;
import javazoom.jl.decoder.Bitstream;
import javazoom.jl.decoder.BitstreamException;
import javazoom.jl.decoder.Decoder;
import javazoom.jl.decoder.DecoderException;
import javazoom.jl.decoder.SampleBuffer;

/** MPEG audio decoded by JLayer; the only class that knows it. A frame that is broken is passed over, as players do. */
final class Mp3Decoder implements Recording.Decoder {
    private static final float FULL_SCALE = 32_768;

    private final Bitstream stream;
    private final Decoder decoder = new Decoder();
    private int lead;

    Mp3Decoder(SeekableByteChannel file) throws IOException {
        this.lead = Mp3Lead.samples(new ByteFile(file));
        this.stream = new Bitstream(sound(file));
    }

    /** From the first frame on: the library would take a tag into memory, as long as that says it is. */
    private static InputStream sound(SeekableByteChannel file) throws IOException {
        long frames = Mp3File.firstFrame(new ByteFile(file));
        return new EndingStream(new BufferedInputStream(Channels.newInputStream(file.position(frames))));
    }

    @Override
    public float[][] next() throws IOException {
        try {
            while (true) {
                var header = stream.readFrame();
                if (header == null) {
                    return new float[0][0];
                }
                try {
                    var samples = behindLead(split((SampleBuffer) decoder.decodeFrame(header, stream)));
                    if (samples[0].length > 0) {
                        return samples;
                    }
                } catch (DecoderException | ArrayIndexOutOfBoundsException broken) {
                    continue;
                } finally {
                    stream.closeFrame();
                }
            }
        } catch (EndingStream.Ended brokenOff) {
            return new float[0][0];
        } catch (BitstreamException e) {
            throw new IOException(e);
        }
    }

    private float[][] behindLead(float[][] samples) {
        int skipped = Math.min(lead, samples[0].length);
        lead -= skipped;
        return skipped == 0
                ? samples
                : Arrays.stream(samples)
                        .map(channel -> Arrays.copyOfRange(channel, skipped, channel.length))
                        .toArray(float[][]::new);
    }

    private static float[][] split(SampleBuffer buffer) {
        int channels = buffer.getChannelCount();
        var samples = new float[channels][buffer.getBufferLength() / channels];
        for (int i = 0; i < buffer.getBufferLength(); i++) {
            samples[i % channels][i / channels] = buffer.getBuffer()[i] / FULL_SCALE;
        }
        return samples;
    }

    @Override
    public void close() throws IOException {
        try {
            stream.close();
        } catch (BitstreamException e) {
            throw new IOException(e);
        }
    }
}
