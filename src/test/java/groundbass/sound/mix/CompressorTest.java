package groundbass.sound.mix;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.signal.SampleRate;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CompressorTest {
    private static final float CEILING = 0.5f;

    @Test
    void nothingPassesTheCeilingAndNothingTurnsOver() {
        var random = new Random(11);
        var samples = new float[30_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (random.nextFloat() - 0.5f) * (i % 5_000 < 200 ? 6 : 0.3f);
        }
        var pressed = samples.clone();
        Compressor.press(SampleRate.CD, pressed, CEILING);
        for (int i = 0; i < samples.length; i++) {
            assertThat(Math.abs(pressed[i])).as("at %d", i).isLessThanOrEqualTo(CEILING + 1e-5f);
            assertThat(pressed[i] * samples[i]).as("at %d", i).isGreaterThanOrEqualTo(0);
        }
    }

    @Test
    void whatIsSoftStaysAsItIs() {
        var samples = new float[10_000];
        samples[5_000] = 0.4f;
        var pressed = samples.clone();
        Compressor.press(SampleRate.CD, pressed, CEILING);
        assertThat(pressed).isEqualTo(samples);
    }

    @Test
    void theGainComesBackAfterATop() {
        var samples = new float[44_100];
        java.util.Arrays.fill(samples, 0.1f);
        samples[1_000] = 2;
        Compressor.press(SampleRate.CD, samples, CEILING);
        assertThat(samples[1_001]).isLessThan(0.04f);
        assertThat(samples[1_000 + 44_100 / 4]).isGreaterThan(0.098f); // a quarter of a second later
    }
}
