package groundbass.sound.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import groundbass.sound.unit.Unit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** rule: bass-amplifier; the bounds are ours. */
class CabinetTest {
    private static final int RATE = 44_100;

    private static float[] heard(double hertz, double level) {
        var now = new AtomicInteger();
        Unit sine = (out, from, count) -> {
            for (int i = from; i < from + count; i++) {
                out[i] += (float) (level * Math.sin(2 * Math.PI * hertz * now.getAndIncrement() / RATE));
            }
        };
        var out = new float[RATE];
        new Cabinet(SampleRate.CD, sine).render(out, 0, out.length);
        return out;
    }

    /** In decibels, of a soft sine. */
    private static double gain(double hertz) {
        float[] out = heard(hertz, 0.01);
        return Measure.decibels(out, RATE / 2, RATE / 4) - 20 * Math.log10(0.01 / Math.sqrt(2));
    }

    @Test
    void whatIsUnderAndOverTheBoxIsLeftOut() {
        assertThat(gain(100)).isCloseTo(0, within(1.0));
        assertThat(gain(15)).isLessThan(-10);
        assertThat(gain(420)).isBetween(-4.0, -2.0);
        assertThat(gain(1_700)).isBetween(2.0, 4.0);
        assertThat(gain(12_000)).isLessThan(-12);
    }

    @Test
    void aHardLowNoteIsToldByItsOctave() {
        double soft = octave(0.05);
        double normal = octave(1);
        // common practice, no source: one to ten hundredths of it are what is called warm
        assertThat(normal).isBetween(-40.0, -20.0).isGreaterThan(soft + 10);
    }

    private static double octave(double level) {
        float[] out = heard(60, level);
        return 20 * Math.log10(Measure.partial(out, RATE / 2, 120) / Measure.partial(out, RATE / 2, 60));
    }

    @Test
    void nothingStandsStill() {
        float[] out = heard(60, 2);
        double sum = 0;
        for (int i = RATE / 2; i < RATE; i++) {
            sum += out[i];
        }
        assertThat(sum / (RATE / 2)).isCloseTo(0, within(0.001));
    }
}
