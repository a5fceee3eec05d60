package groundbass.sound.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import groundbass.sound.drum.Membrane;
import groundbass.sound.keys.SineTable;
import groundbass.sound.keys.SoftTone;
import groundbass.sound.string.Amplifier;
import groundbass.sound.string.LoopFilter;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Each unit against its own formula; where a figure is named, it follows from that formula by hand. */
class UnitsTest {
    private static final SampleRate RATE = SampleRate.CD;

    private static float[] render(Unit unit, int count, int block) {
        var out = new float[count];
        for (int from = 0; from < count; from += block) {
            unit.render(out, from, Math.min(block, count - from));
        }
        return out;
    }

    @Test
    void aOnePoleIsThreeDecibelsDownAtItsCorner() {
        // |H| = 1 / sqrt 2 at the corner of a first-order low-pass (any textbook on filters)
        var filter = new OnePole(RATE, 1_000);
        var out = new float[RATE.hertz()];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) filter.low(Math.sin(RATE.radians(1_000) * i));
        }
        // the mean power of a full sine is -3 dB, so -6 in all; the digital filter is a little off the analogue one
        assertThat(Measure.decibels(out, 1_000, 40_000)).isCloseTo(-6, within(0.3));
    }

    @Test
    void aDecayFallsBySixtyDecibelsInItsTime() {
        // 10^(-3) of the amplitude
        assertThat(Math.pow(RATE.decay(0.5), RATE.hertz() * 0.5)).isCloseTo(0.001, within(1e-9));
        float[] skin = render(new Membrane(RATE, 400, 400, 1, 0.5, 1), RATE.hertz(), 777);
        double early = Measure.decibels(skin, 0, 1_103);
        assertThat(Measure.decibels(skin, 22_050, 1_103) - early).isCloseTo(-60, within(0.5));
    }

    @Test
    void noiseIsTheSameForTheSameSeedAndHasNoMean() {
        var first = new Noise(5);
        var again = new Noise(5);
        var other = new Noise(6);
        double sum = 0;
        int different = 0;
        for (int i = 0; i < 100_000; i++) {
            float value = first.next();
            assertThat(again.next()).isEqualTo(value);
            assertThat(value).isBetween(-1f, 1f);
            different += other.next() == value ? 0 : 1;
            sum += value;
        }
        // standard deviation of the mean of 100 000 values: 0.577 / 316 = 0.0018
        assertThat(sum / 100_000).isCloseTo(0, within(0.0075));
        assertThat(different).isGreaterThan(99_000);
    }

    @Test
    void aSoftToneStartsGentlyAndEndsAfterItIsLetGo() {
        float[] tone = render(new SoftTone(RATE, 220, RATE.at(0.9), 0.5), 2 * RATE.hertz(), 512);
        assertThat(Math.abs(tone[0])).isLessThan(0.01f);
        assertThat(Measure.cents(Measure.hertz(tone, 2_000, 220), 220)).isCloseTo(0, within(1.0));
        assertThat(Measure.decibels(tone, 3 * RATE.hertz() / 2, 2_000)).isLessThan(-80);
    }

    @Test
    void aSoftToneIsTheSameHoweverItIsCut() {
        float[] whole = render(new SoftTone(RATE, 220, RATE.at(0.3), 0.5), 20_000, 20_000);
        assertThat(render(new SoftTone(RATE, 220, RATE.at(0.3), 0.5), 20_000, 7))
                .isEqualTo(whole);
    }

    @Test
    void aChokedShotFadesAndAnUnchokedOneDoesNot() {
        float[] steady = new float[20_000];
        Arrays.fill(steady, 1);
        var choked = new OneShotSampler(RATE, List.of(new OneShotSampler.Shot(100, steady, 0.5f, 5_000)));
        float[] out = render(choked, 20_000, 333);
        assertThat(out[99]).isZero();
        assertThat(out[100]).isEqualTo(0.5f);
        assertThat(out[4_999]).isEqualTo(0.5f);
        assertThat(out[10_000]).isLessThan(0.001f);
        var free = new OneShotSampler(RATE, List.of(OneShotSampler.Shot.of(100, steady, 0.5)));
        assertThat(render(free, 20_000, 1)[10_000]).isEqualTo(0.5f);
    }

    @Test
    void theAmplifierLeavesSoftStrokesAndPressesHardOnes() {
        // x / sqrt(1 + (x / 3)^2): 0.1 stays within 0.1 %, 5 becomes 5 / sqrt(34 / 9) = 2.572
        Unit soft = (out, from, count) -> out[from] += 0.1f;
        Unit hard = (out, from, count) -> out[from] += 5;
        assertThat(render(new Amplifier(RATE, soft), 1, 1)[0]).isCloseTo(0.1f, within(0.0005f));
        assertThat(render(new Amplifier(RATE, hard), 1, 1)[0]).isCloseTo(2.572f, within(0.01f));
    }

    @Test
    void theLoopFilterDelaysWhatItsFormulaSays() {
        // one pole at low frequency: a / (1 - a) samples (first term of the phase delay)
        var filter = new LoopFilter(0.5, 0.5);
        assertThat(filter.delay(0.001)).isCloseTo(1, within(1e-3));
    }

    @Test
    void highPartialsFallFaster() {
        // rule: decay-of-partials: partial 20 in 12 / (1 + 4.472) s
        var filter = LoopFilter.of(RATE, 41.2034, 12, 0.05);
        double w = RATE.radians(20 * 41.2034);
        double real = 1 - filter.a() * Math.cos(w);
        double imaginary = filter.a() * Math.sin(w);
        double gain = filter.b() / Math.hypot(real, imaginary);
        assertThat(-3 / (41.2034 * Math.log10(gain))).isCloseTo(12 / 5.472, within(0.02));
    }

    @Test
    void theTableOfSinesIsGoodToAHundredDecibels() {
        // straight lines over a 4096th of the circle err by at most h^2 / 8 = 2.9e-7 (any textbook), and floats by 6e-8
        for (int i = 0; i < 100_000; i++) {
            int phase = i * 0x9E3779B9;
            double turns = (phase & 0xFFFFFFFFL) / SineTable.CIRCLE;
            assertThat((double) SineTable.at(phase)).isCloseTo(Math.sin(2 * Math.PI * turns), within(1e-6));
        }
    }
}
