package groundbass.audio;

import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.SeekableByteChannel;

/**
 * The sound of a file that {@link AudioProbe} has found good, decoded block by block in bounded memory. Where the file
 * breaks off, the sound ends; it is never longer than the facts say by more than a frame of its format.
 */
public final class Recording implements Sound, AutoCloseable {
    private final AudioFacts facts;
    private final Decoder decoder;
    private final long frames;
    private float[][] ready = new float[0][0];
    private int used;
    private long read;

    /** Decodes one format. */
    interface Decoder extends AutoCloseable {
        /** The next samples by channel, of any number; no channels at the end. @throws IOException also where broken */
        float[][] next() throws IOException;

        @Override
        void close() throws IOException;
    }

    private Recording(AudioFacts facts, Decoder decoder) {
        this.facts = facts;
        this.decoder = decoder;
        this.frames = Math.round(facts.duration().toMillis() * facts.sampleRate() / 1000.0);
    }

    /** @param file from its beginning; it is closed with the recording, and where it cannot be decoded */
    public static Recording open(SeekableByteChannel file, AudioFacts facts) throws IOException {
        try {
            return new Recording(facts, decoder(file, facts.format()));
        } catch (IOException | RuntimeException broken) {
            file.close();
            throw broken;
        }
    }

    private static Decoder decoder(SeekableByteChannel file, AudioFormat format) throws IOException {
        return switch (format) {
            case WAV -> new WavDecoder(file);
            case MP3 -> new Mp3Decoder(file);
            case FLAC -> new FlacDecoder(FlacFile.sound(file));
        };
    }

    @Override
    public SampleRate rate() {
        return new SampleRate(facts.sampleRate());
    }

    @Override
    public int channels() {
        return facts.channels();
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public int read(float[][] channels) {
        int done = 0;
        while (done < channels[0].length && hasMore()) {
            int count = Math.min(channels[0].length - done, ready[0].length - used);
            for (int channel = 0; channel < channels.length; channel++) {
                System.arraycopy(ready[channel], used, channels[channel], done, count);
            }
            used += count;
            done += count;
        }
        read += done;
        return done;
    }

    private boolean hasMore() {
        while (ready.length == 0 || used == ready[0].length) {
            ready = read >= frames + facts.sampleRate() ? new float[0][0] : decoded();
            used = 0;
            if (ready.length < facts.channels()) {
                return false;
            }
        }
        return true;
    }

    private float[][] decoded() {
        try {
            return decoder.next();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        decoder.close();
    }
}
