package groundbass.listening;

import static groundbass.OutsideTools.said;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.audio.Wav;
import groundbass.groove.Band;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BandTrack;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mix;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoudnessTest {
    private static final Pattern INTEGRATED = Pattern.compile("I:\\s+(-?[0-9.]+) LUFS");
    private static final Pattern PEAK = Pattern.compile("Peak:\\s+(-?[0-9.]+) dBFS");

    /** A sine in some channels, as long and as loud as a list of stretches says. */
    private static Loudness sine(
            int rate, double hertz, double phase, int channels, int sounding, double... stretches) {
        var meter = new LoudnessMeter(rate, channels);
        long now = 0;
        for (int stretch = 0; stretch < stretches.length; stretch += 2) {
            int count = (int) (stretches[stretch] * rate);
            double level = Math.pow(10, stretches[stretch + 1] / 20);
            var block = new float[channels][count];
            for (int i = 0; i < count; i++, now++) {
                for (int channel = 0; channel < sounding; channel++) {
                    block[channel][i] = (float) (level * Math.sin(2 * Math.PI * hertz * now / rate + phase));
                }
            }
            meter.add(block, count);
        }
        return meter.reading();
    }

    /** ITU-R BS.1770-4, Annex 1: a 997 Hz sine of 0 dBFS in one front channel reads -3.01 LKFS. */
    @ParameterizedTest
    @ValueSource(ints = {44_100, 48_000, 96_000})
    void aSineOfFullScaleInOneChannelReadsMinusThree(int rate) {
        assertThat(sine(rate, 997, 0, 2, 1, 5, 0).integrated()).isEqualTo(-3.01, within(0.02));
        assertThat(sine(rate, 997, 0, 1, 1, 5, 0).integrated()).isEqualTo(-3.01, within(0.02));
        assertThat(sine(rate, 997, 0, 2, 2, 5, 0).integrated()).isEqualTo(0, within(0.02));
    }

    /** The coefficients that ITU-R BS.1770-4 prints for 48 kHz, tables 1 and 2. */
    @Test
    void theDerivedFiltersAreThoseThatTheStandardPrints() {
        var shelf = KWeighting.shelf(48_000);
        assertThat(new double[] {shelf.b0(), shelf.b1(), shelf.b2(), shelf.a1(), shelf.a2()})
                .containsExactly(
                        new double[] {
                            1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585
                        },
                        within(1e-9));
        var pass = KWeighting.pass(48_000);
        assertThat(new double[] {pass.b0(), pass.b1(), pass.b2(), pass.a1(), pass.a2()})
                .containsExactly(new double[] {1, -2, 1, -1.99004745483398, 0.99007225036621}, within(1e-9));
    }

    /** EBU Tech 3341, cases 1 to 3 of its minimum requirements (from memory; the second meter below reads the first two alike). */
    @Test
    void theBroadcastersTestTonesReadAsPublished() {
        assertThat(sine(48_000, 1000, 0, 2, 2, 20, -23).integrated()).isEqualTo(-23, within(0.1));
        assertThat(sine(48_000, 1000, 0, 2, 2, 20, -33).integrated()).isEqualTo(-33, within(0.1));
        assertThat(sine(48_000, 1000, 0, 2, 2, 10, -36, 60, -23, 10, -36).integrated())
                .isEqualTo(-23, within(0.1));
    }

    @Test
    void silenceAndSoftHissAreGatedAway() {
        double alone = sine(48_000, 1000, 0, 2, 2, 5, -20).integrated();
        // five seconds with 0.4 s blocks across the edges, hence the width
        assertThat(sine(48_000, 1000, 0, 2, 2, 5, -20, 30, -80).integrated()).isEqualTo(alone, within(0.3));
        assertThat(new LoudnessMeter(48_000, 2).reading().integrated()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /**
     * ITU-R BS.1770-4, Annex 2 and EBU Tech 3341 (+0.2/-0.4 dB): a sine at a quarter of the rate, sampled at 45 degrees,
     * shows 0.707 in its samples and 1 between them.
     */
    @Test
    void theTruePeakLiesBetweenTheSamples() {
        double peak = sine(48_000, 12_000, Math.PI / 4, 1, 1, 1, 0).truePeak();
        assertThat(peak).isBetween(-0.4, 0.2);
        assertThat(sine(48_000, 997, 0, 1, 1, 1, -6).truePeak()).isEqualTo(-6, within(0.05));
    }

    @Test
    void thePeakIsTheSameHoweverTheSoundIsCut() {
        var whole = new TruePeak(1);
        var cut = new TruePeak(1);
        var samples = noise(7, 10_000);
        whole.add(new float[][] {samples}, samples.length);
        for (int from = 0; from < samples.length; from += 7) {
            int count = Math.min(7, samples.length - from);
            cut.add(new float[][] {java.util.Arrays.copyOfRange(samples, from, from + count)}, count);
        }
        assertThat(cut.decibels()).isEqualTo(whole.decibels(), within(0.01));
    }

    private static float[] noise(long seed, int count) {
        var random = new java.util.Random(seed);
        var samples = new float[count];
        for (int i = 0; i < count; i++) {
            samples[i] = random.nextFloat() - 0.5f;
        }
        return samples;
    }

    /** A meter of another house. */
    @Test
    void aSecondMeterReadsTheSame(@TempDir Path folder) throws IOException, InterruptedException {
        var line = LineText.read("""
                tempo 120
                bar 1 over Am7
                1-4 A0 slap, A2, E3, G2 pop
                bar 2 = bar 1
                """).line();
        var performance = Performance.of(line);
        var wav = folder.resolve("line.wav");
        var sounds = BarSounds.of(performance, Band.of(performance));
        var softly = Balance.EVEN.times(0.4); // so that a file of whole numbers holds every peak
        Files.write(wav, Wav.bytes(new BandTrack(performance, sounds, Mix.FULL, softly)));
        var ours = Loudness.of(new BandTrack(performance, sounds, Mix.FULL, softly));
        String said = said("ffmpeg", measured("-i", wav.toString()));
        // its summary comes last and has one digit behind the point
        assertThat(ours.integrated()).isEqualTo(last(INTEGRATED, said), within(0.1 + 0.05));
        assertThat(ours.truePeak()).isEqualTo(last(PEAK, said), within(0.2));
    }

    /** The second meter makes the tones of EBU Tech 3341 itself, so what they read does not hang on ours. */
    @ParameterizedTest
    @CsvSource({"-23, 20, -23", "-33, 20, -33"})
    void theSecondMeterReadsTheBroadcastersTonesAlike(double level, int seconds, double integrated)
            throws IOException, InterruptedException {
        // that generator's sine has an amplitude of 1/8
        double factor = 8 * Math.pow(10, level / 20);
        String tone = "sine=frequency=1000:sample_rate=48000:duration=" + seconds + ",volume=" + factor
                + ",pan=stereo|c0=c0|c1=c0";
        String said = said("ffmpeg", measured("-f", "lavfi", "-i", tone));
        assertThat(last(INTEGRATED, said)).isEqualTo(integrated, within(0.1 + 1e-9));
        assertThat(sine(48_000, 1000, 0, 2, 2, seconds, level).integrated())
                .isEqualTo(last(INTEGRATED, said), within(0.1 + 0.05));
    }

    private static String[] measured(String... input) {
        return Stream.of(
                        Stream.of("-hide_banner", "-nostats"),
                        Stream.of(input),
                        Stream.of("-af", "ebur128=peak=true", "-f", "null", "-"))
                .flatMap(arguments -> arguments)
                .toArray(String[]::new);
    }

    private static double last(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .reduce((before, after) -> after)
                .map(found -> Double.parseDouble(found.group(1)))
                .orElseThrow(() -> new AssertionError(text));
    }

    /** EBU Tech 3341: the momentary loudness is that of 0.4 s without a gate; here by the sine of BS.1770-4 (from memory). */
    @Test
    void theLoudestMomentIsThatOfFourTenthsOfASecond() {
        var meter = new LoudnessMeter(48_000, 1);
        var block = new float[1][3 * 48_000];
        for (int i = 48_000; i < 2 * 48_000; i++) {
            block[0][i] = (float) Math.sin(2 * Math.PI * 997 * i / 48_000);
        }
        meter.add(block, block[0].length);
        assertThat(meter.momentary()).isEqualTo(-3.01, within(0.05));
        assertThat(meter.reading().integrated()).isLessThan(-3.5);
        assertThat(new LoudnessMeter(48_000, 1).momentary()).isEqualTo(Double.NEGATIVE_INFINITY);
    }
}
