package groundbass.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class Mp3LeadTest {
    private static final int RATE = 44_100;
    private static final int ENCODER_DELAY = 576;

    @TempDir
    Path folder;

    /** A tone that sets in after half a second; the tag adds a silent frame of 1152 samples, as ISO/IEC 11172-3 has them. */
    @Test
    void theFrameOfTheTagAndTheDelayItTellsOfAreLeftOut() throws IOException {
        byte[] mp3 = Mp3.bytes(new ToneAfterSilence());
        int bare = firstFrame(mp3);
        var tagged = new ByteArrayOutputStream();
        tagged.write(tagFrame(mp3, bare));
        tagged.write(mp3, bare, mp3.length - bare);
        double untagged = onset(Arrays.copyOfRange(mp3, bare, mp3.length));
        assertThat(onset(tagged.toByteArray()))
                .as("without the frame, and by 576 and 529 samples sooner")
                .isEqualTo(untagged - 1105.0 / RATE, within(0.0005));
    }

    /** Behind the tags, and behind a first frame that is one itself. */
    private int firstFrame(byte[] mp3) throws IOException {
        var path = Files.write(folder.resolve("first.mp3"), mp3);
        try (var channel = Files.newByteChannel(path)) {
            var file = new ByteFile(channel);
            int at = (int) Mp3File.firstFrame(file);
            int length = Mp3Frame.read(file.bigEndian32(at)).orElseThrow().length();
            return Mp3Lead.samples(file) > 0 ? at + length : at;
        }
    }

    private static byte[] tagFrame(byte[] mp3, int at) {
        int header =
                (mp3[at] & 0xff) << 24 | (mp3[at + 1] & 0xff) << 16 | (mp3[at + 2] & 0xff) << 8 | mp3[at + 3] & 0xff;
        var like = Mp3Frame.read(header).orElseThrow();
        byte[] frame = new byte[like.length()];
        System.arraycopy(mp3, at, frame, 0, Mp3Frame.HEADER);
        int tag = Mp3Frame.HEADER + like.sideInformation();
        System.arraycopy("Info".getBytes(StandardCharsets.US_ASCII), 0, frame, tag, 4);
        frame[tag + 8 + 21] = (byte) (ENCODER_DELAY >> 4);
        frame[tag + 8 + 22] = (byte) (ENCODER_DELAY << 4);
        return frame;
    }

    /** When the sound first reaches a fifth of full scale, in seconds. */
    private double onset(byte[] mp3) throws IOException {
        var path = Files.write(folder.resolve("sound.mp3"), mp3);
        AudioFacts facts;
        try (var channel = Files.newByteChannel(path)) {
            facts = ((AudioFinding.Audio) AudioProbe.probe(channel)).facts();
        }
        try (var recording = Recording.open(Files.newByteChannel(path), facts)) {
            var block = new float[recording.channels()][256];
            long before = 0;
            for (int count = recording.read(block); count > 0; count = recording.read(block)) {
                for (int i = 0; i < count; i++) {
                    if (Math.abs(block[0][i]) > 0.2) {
                        return (before + i) / (double) RATE;
                    }
                }
                before += count;
            }
        }
        return -1;
    }

    private static final class ToneAfterSilence implements Sound {
        private int at;

        @Override
        public SampleRate rate() {
            return new SampleRate(RATE);
        }

        @Override
        public int channels() {
            return 1;
        }

        @Override
        public long frames() {
            return RATE;
        }

        @Override
        public int read(float[][] block) {
            int count = Math.min(block[0].length, RATE - at);
            for (int i = 0; i < count; i++, at++) {
                block[0][i] = at < RATE / 2 ? 0 : (float) (0.6 * StrictMath.sin(2 * Math.PI * 1000 * at / RATE));
            }
            return count;
        }
    }
}
