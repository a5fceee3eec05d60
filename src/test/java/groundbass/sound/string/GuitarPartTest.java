package groundbass.sound.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.groove.Band;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import java.util.ArrayList;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class GuitarPartTest {
    private static final int RATE = 44_100;

    private static float[] played(String bars, int block) {
        var performance = Performance.of(LineText.read("tempo 60\n" + bars).line());
        var unit = GuitarPart.of(SampleRate.CD, Band.of(performance).chords());
        var out = new float[(int) (performance.seconds() * RATE) + 2 * RATE];
        for (int from = 0; from < out.length; from += block) {
            unit.render(out, from, Math.min(block, out.length - from));
        }
        return Arrays.copyOfRange(out, (int) (performance.seconds(performance.start()) * RATE), out.length);
    }

    @Test
    void eachToneOfAChordIsInTune() {
        var performance = Performance.of(
                LineText.read("tempo 60\nbar 1 over Dm7\n1-4 rest\n").line());
        var keys = Band.of(performance).chords().get(0).voicing().midi();
        float[] samples = played("bar 1 over Dm7\n1-4 rest\n", 1_024);
        var wrong = new ArrayList<String>();
        for (int key : keys) {
            double hertz = 440 * Math.pow(2, (key - 69) / 12.0); // ISO 16
            double cents = Measure.cents(Measure.hertz(samples, RATE / 20, hertz), hertz);
            if (Math.abs(cents) > 3) {
                wrong.add(key + ": " + cents);
            }
        }
        assertThat(keys).hasSizeGreaterThan(2);
        assertThat(wrong).isEmpty();
    }

    @Test
    void aChordEndsWithTheHand() {
        float[] samples = played("bar 1 over Dm7\n1-4 rest\n", 1_024);
        assertThat(Measure.decibels(samples, RATE / 10, RATE / 10)).isGreaterThan(-40);
        assertThat(Measure.decibels(samples, 5 * RATE, RATE / 2)).isLessThan(-100);
    }

    @Test
    void theTopOfAStrumComesAfterItsBottom() {
        // three strings at least, 9 ms between each: common practice, no source
        float[] samples = played("bar 1 over Dm7\n1-4 rest\n", 1_024);
        double first = Measure.decibels(samples, 0, 350);
        assertThat(Measure.decibels(samples, 1_400, 350)).isGreaterThan(first);
        // what sounds before the second string is lower than the whole chord
        assertThat(Measure.centroid(samples, 0, 350)).isLessThan(Measure.centroid(samples, 1_400, RATE / 4));
    }

    @Test
    void blocksOfAnySizeGiveTheSameSamples() {
        String bars = "bar 1 over Dm7\n1-4 rest\nbar 2 over G7\n1-4 rest\n";
        assertThat(played(bars, 100))
                .isEqualTo(played(bars, 1 << 16))
                .satisfies(samples -> assertThat(Measure.mean(samples)).isCloseTo(0, within(0.001)));
    }
}
