package groundbass.audio;

import static groundbass.OutsideTools.said;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A decoder that is not ours (ffmpeg) begins and ends with the sound, as loud as it was. */
class Mp3InfoTest {
    private static final int RATE = 44_100;

    /** A tone that sets in after 5,000 samples and lasts to the end. */
    private record Tone(int length, int channels, int[] at) implements Sound {
        @Override
        public SampleRate rate() {
            return SampleRate.CD;
        }

        @Override
        public long frames() {
            return length;
        }

        @Override
        public int read(float[][] block) {
            int count = Math.min(block[0].length, length - at[0]);
            for (int i = 0; i < count; i++, at[0]++) {
                for (float[] channel : block) {
                    channel[i] = at[0] < 5_000 ? 0 : (float) (0.5 * Math.sin(2 * Math.PI * 441 * at[0] / RATE));
                }
            }
            return count;
        }
    }

    @ParameterizedTest
    @CsvSource({"44100, 2", "40000, 2", "30001, 1", "57600, 2"})
    void theSoundBeginsAndEndsWhereItDid(int length, int channels, @TempDir Path folder)
            throws IOException, InterruptedException {
        var file = folder.resolve("tone.mp3");
        var raw = folder.resolve("tone.raw");
        Files.write(file, Mp3.bytes(new Tone(length, channels, new int[1])));
        said("ffmpeg", "-hide_banner", "-i", file.toString(), "-ac", "1", "-f", "s16le", raw.toString());
        var samples = ByteBuffer.wrap(Files.readAllBytes(raw))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asShortBuffer();
        assertThat(samples.remaining()).isEqualTo(length);
        int onset = 0;
        while (Math.abs(samples.get(onset)) < 4_000) {
            onset++;
        }
        // sin reaches 4000/16384 after an eightieth of its period of 100 samples, 4 samples; the encoder smears it a
        // little
        assertThat(onset).isBetween(4_990, 5_010);
        double power = 0;
        for (int i = 10_000; i < 20_000; i++) {
            power += samples.get(i) * (double) samples.get(i) / 10_000;
        }
        // a sine's power is half the square of its amplitude
        assertThat(10 * Math.log10(power / (0.125 * 32_767 * 32_767))).isEqualTo(0, within(0.1));
    }
}
