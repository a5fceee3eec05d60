package groundbass.sound.string;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.sound.Measure;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every place of a five-string neck of 24 frets, read from rendered notes. */
class StringBankTest {
    private static final int FRETS = 24;

    private static float[] held(int string, int fret, Technique hand) {
        return Played.from(
                line(quarters(60).with(Tuning.FIVE_STRING), bar(note(f(0, 1), f(1, 1), Place.of(string, fret), hand))));
    }

    private static double hertz(int openMidi, int fret) {
        return 440 * Math.pow(2, (openMidi + fret - 69) / 12.0);
    }

    @ParameterizedTest
    @CsvSource({"5, 23", "4, 28", "3, 33", "2, 38", "1, 43"})
    void everyFretIsInTuneWithinTwoCents(int string, int openMidi) {
        // 440 * 2^((m - 69) / 12): twelve-tone equal temperament on A4 = 440 Hz (ISO 16)
        for (int fret = 0; fret <= FRETS; fret++) {
            double expected = hertz(openMidi, fret);
            double found = Measure.hertz(held(string, fret, Technique.FINGER), Played.RATE / 4, expected);
            assertThat(Measure.cents(found, expected)).as("fret %d", fret).isCloseTo(0, within(2.0));
        }
    }

    @ParameterizedTest
    @CsvSource({"5, 23, 14", "4, 28, 12", "3, 33, 10", "2, 38, 8", "1, 43, 6"})
    void everyFretFallsAsItsTimeSays(int string, int openMidi, double openSeconds) {
        // rule: decay-of-strings: at first up to a fifth faster than on the whole
        for (int fret = 0; fret <= FRETS; fret++) {
            double wanted = openSeconds * Math.pow(2, -fret / 12.0);
            float[] samples = held(string, fret, Technique.FINGER);
            double hertz = hertz(openMidi, fret);
            double decibels = 20
                    * Math.log10(Measure.partial(samples, Played.RATE / 4, hertz)
                            / Measure.partial(samples, Played.RATE * 5 / 4, hertz));
            assertThat(60 / decibels).as("fret %d", fret).isBetween(wanted * 0.8, wanted * 1.1);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 43, 12, 3", "1, 43, 19, 2", "2, 38, 17, 3"})
    void aStringFallsQuicklyAtFirstAndSlowlyLater(int string, int openMidi, int fret, double seconds) {
        // rule: decay-of-strings: to -60 dB in its time, with two speeds; 3 dB and a tenth are ours
        float[] samples = held(string, fret, Technique.FINGER);
        double hertz = hertz(openMidi, fret);
        int quarter = (int) (seconds * Played.RATE / 4);
        double[] levels = new double[5];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = 20 * Math.log10(Measure.partial(samples, Played.RATE / 20 + i * quarter, hertz));
        }
        assertThat(levels[0] - levels[4]).isCloseTo(60, within(3.0));
        assertThat(levels[0] - levels[1]).isGreaterThan(1.1 * (levels[3] - levels[4]));
    }

    @ParameterizedTest
    @CsvSource({
        // Kemp 2020: a low B stopped at fret 12 is about 100 cents sharp at partial 10, at fret 21 at partial 6, and
        // nearly harmonic when open; the figures of the open string by B * 2^(n / 6) (rule: string-stiffness)
        "12, 10, 100",
        "21, 6, 100",
        "0, 10, 25"
    })
    void aStiffStringSoundsItsHighPartialsSharp(int fret, int partial, double cents) {
        float[] samples = held(5, fret, Technique.PICK);
        double first = Measure.hertz(samples, Played.RATE / 20, hertz(23, fret));
        double expected = first * partial * Math.pow(2, cents / 1200);
        double found = Measure.hertz(samples, Played.RATE / 20, expected);
        assertThat(Measure.cents(found, first * partial)).isCloseTo(cents, within(10.0));
    }
}
