package groundbass.sound.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.listening.Loudness;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TruePeakLimiterTest {
    private static final int FRAMES = 44_100;
    private static final double CEILING = 0.5;

    /** Samples that are there, on both sides; the right one softer. */
    private static final class Given implements Sound {
        private final float[] samples;
        private int at;

        private Given(float[] samples) {
            this.samples = samples;
        }

        @Override
        public SampleRate rate() {
            return SampleRate.CD;
        }

        @Override
        public int channels() {
            return 2;
        }

        @Override
        public long frames() {
            return samples.length;
        }

        @Override
        public int read(float[][] block) {
            int count = Math.min(block[0].length, samples.length - at);
            for (int i = 0; i < count; i++, at++) {
                block[0][i] = samples[at];
                block[1][i] = samples[at] / 4;
            }
            return count;
        }
    }

    /** Soft noise with bursts in it, twelve times as high as the ceiling. */
    private static float[] bursts() {
        var random = new Random(11);
        var samples = new float[FRAMES];
        float before = 0;
        for (int i = 0; i < samples.length; i++) {
            before = 0.5f * before + (random.nextFloat() - 0.5f) * (i % 7_000 < 300 ? 12 : 0.3f);
            samples[i] = before;
        }
        return samples;
    }

    private static float[][] limited(float[] samples, int block) {
        var sound = new TruePeakLimiter(new Given(samples), CEILING);
        var all = new float[2][samples.length];
        var part = new float[2][block];
        int at = 0;
        for (int count = sound.read(part); count > 0; count = sound.read(part)) {
            System.arraycopy(part[0], 0, all[0], at, count);
            System.arraycopy(part[1], 0, all[1], at, count);
            at += count;
        }
        assertThat(at).isEqualTo(samples.length);
        return all;
    }

    /** ITU-R BS.1770-4, Annex 2; its fourfold oversampling reads up to 0.4 dB too little. */
    @Test
    void noTruePeakPassesTheCeiling() {
        double ceiling = 20 * Math.log10(CEILING);
        assertThat(Loudness.of(new Given(bursts())).truePeak()).isGreaterThan(ceiling + 20);
        var held = Loudness.of(new TruePeakLimiter(new Given(bursts()), CEILING));
        assertThat(held.truePeak()).isBetween(ceiling - 1.5, ceiling + 0.2);
    }

    @Test
    void nothingTurnsOverAndBothSidesFallAlike() {
        float[] samples = bursts();
        float[][] held = limited(samples, 4_096);
        for (int i = 0; i < samples.length; i++) {
            assertThat(held[0][i] * samples[i]).as("at %d", i).isGreaterThanOrEqualTo(0);
            assertThat(held[1][i]).as("at %d", i).isEqualTo(held[0][i] / 4, within(1e-6f));
        }
    }

    @Test
    void whatIsSoftStaysAsItIsAndWhereItIs() {
        var samples = new float[FRAMES];
        samples[0] = 0.1f;
        samples[5_000] = 0.3f;
        samples[FRAMES - 1] = -0.2f;
        assertThat(limited(samples, 1_000)[0]).isEqualTo(samples);
    }

    @Test
    void blocksOfAnySizeGiveTheSameSamples() {
        float[][] once = limited(bursts(), 4_096);
        assertThat(limited(bursts(), 333)).isDeepEqualTo(once);
        assertThat(limited(bursts(), 1_024)).isDeepEqualTo(once);
    }

    @Test
    void theGainComesBackAfterATop() {
        var samples = new float[FRAMES];
        java.util.Arrays.fill(samples, 0.1f);
        samples[1_000] = 2;
        float[] held = limited(samples, 4_096)[0];
        assertThat(held[1_001]).isLessThan(0.04f);
        assertThat(held[1_000 + FRAMES / 4]).isGreaterThan(0.098f); // a quarter of a second later
    }

    @Test
    void silenceOfAnyLengthIsSilence() {
        for (int frames : new int[] {0, 1, 143, 144, 145, 1_023, 1_024, 2_048}) {
            assertThat(limited(new float[frames], 500)[0])
                    .as("%d frames", frames)
                    .isEqualTo(new float[frames]);
        }
    }
}
