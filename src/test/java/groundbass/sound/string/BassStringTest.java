package groundbass.sound.string;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.performance.Lines;
import groundbass.performance.Performance;
import groundbass.score.Arrival;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import groundbass.sound.mix.Stems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BassStringTest {
    private static final int RATE = 44_100;

    /** A bar of count-in at 60 lasts 4 s: the first note's first sample. */
    private static final int FIRST = 4 * RATE;

    private static float[] bass(Line line) {
        return bass(line, 1_024);
    }

    private static float[] bass(Line line, int block) {
        var performance = Performance.of(line);
        var unit = Stems.bass(SampleRate.CD, performance);
        var out = new float[(int) (performance.seconds() * RATE) + RATE];
        for (int from = 0; from < out.length; from += block) {
            unit.render(out, from, Math.min(block, out.length - from));
        }
        return out;
    }

    private static Line held(Place place, Technique hand) {
        return line(quarters(60).with(Tuning.FIVE_STRING), bar(note(f(0, 1), f(1, 1), place, hand)));
    }

    @ParameterizedTest
    @CsvSource({
        // 440 * 2^((m - 69) / 12), twelve-tone equal temperament on A4 = 440 Hz (ISO 16; rule: equal-temperament)
        "5, 0, 30.8677",
        "4, 0, 41.2034",
        "3, 0, 55.0000",
        "2, 0, 73.4162",
        "1, 0, 97.9989",
        "1, 5, 130.8128",
        "1, 24, 391.9954",
        "4, 12, 82.4069",
        "2, 7, 110.0000",
        "5, 19, 92.4986"
    })
    void everyPlaceIsInTune(int string, int fret, double hertz) {
        float[] samples = bass(held(Place.of(string, fret), Technique.FINGER));
        assertThat(Measure.cents(Measure.hertz(samples, FIRST + RATE / 4, hertz), hertz))
                .isCloseTo(0, within(1.0));
    }

    @ParameterizedTest
    @CsvSource({
        // rule: decay-of-strings
        "5, 0, 30.8677, 14",
        "4, 0, 41.2034, 12",
        "3, 0, 55.0000, 10",
        "2, 0, 73.4162, 8",
        "1, 0, 97.9989, 6",
        "1, 12, 195.9977, 3"
    })
    void theFundamentalFallsBySixtyDecibelsInItsTime(int string, int fret, double hertz, double seconds) {
        float[] samples = bass(held(Place.of(string, fret), Technique.FINGER));
        double early = Measure.partial(samples, FIRST + RATE / 2, hertz);
        double late = Measure.partial(samples, FIRST + RATE * 5 / 2, hertz);
        double decibels = 20 * Math.log10(early / late);
        assertThat(60 / decibels * 2).isCloseTo(seconds, within(seconds * 0.1));
    }

    @Test
    void theLoopGainIsThatOfTheDecay() {
        // rule: loop-gain: E1 with 10 s is 0.983375
        var filter = LoopFilter.of(SampleRate.CD, 41.2034, 10, 0);
        assertThat(filter.b() / (1 - filter.a())).isCloseTo(0.983375, within(1e-6));
    }

    @Test
    void slapAndPopAreBrighterAndLouderThanAFinger() {
        // rule: technique-sound, its order of brightness and level
        var place = Place.of(3, 5);
        float[] finger = bass(held(place, Technique.FINGER));
        float[] slap = bass(held(place, Technique.SLAP));
        float[] pop = bass(held(place, Technique.POP));
        float[] mute = bass(held(place, Technique.MUTE));
        assertThat(centroid(slap)).isGreaterThan(centroid(finger) * 1.15);
        assertThat(centroid(pop)).isGreaterThan(centroid(slap) * 1.15);
        assertThat(level(slap) - level(finger)).isBetween(1.0, 6.0);
        assertThat(level(pop) - level(finger)).isBetween(3.0, 8.0);
        assertThat(level(mute)).isLessThan(level(finger) - 3);
        assertThat(Measure.attack(slap, FIRST)).isLessThan(0.004);
    }

    private static double centroid(float[] samples) {
        return Measure.centroid(samples, FIRST, 2_205);
    }

    private static double level(float[] samples) {
        return Measure.decibels(samples, FIRST, 8_820);
    }

    @Test
    void aDeadNoteIsOverWhereAPitchedOneSings() {
        // rule: dead-note-sound: 60 to 200 ms
        float[] dead = bass(held(Place.dead(4), Technique.FINGER));
        double start = Measure.decibels(dead, FIRST, 2_205);
        assertThat(start).isGreaterThan(-60);
        assertThat(Measure.decibels(dead, FIRST + RATE / 4, 2_205)).isLessThan(start - 50);
    }

    @Test
    void aHammeredNoteSoundsAtItsNewPitchWithoutANewStroke() {
        var line =
                line(quarters(60), bar(note(f(0, 1), f(1, 4), 5), Lines.by(Arrival.Kind.HAMMER, f(1, 4), f(1, 2), 7)));
        float[] samples = bass(line);
        // E string fret 7: B1, 61.7354 Hz (ISO 16)
        double hertz = Measure.hertz(samples, FIRST + RATE + RATE / 8, 61.7354);
        assertThat(Measure.cents(hertz, 61.7354)).isCloseTo(0, within(3.0));
        assertThat(Measure.decibels(samples, FIRST + RATE, 4_410)).isLessThan(Measure.decibels(samples, FIRST, 4_410));
    }

    @Test
    void aBendArrivesAtItsPitch() {
        var bent = note(f(0, 1), f(1, 1), Place.of(1, 7), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2)));
        float[] samples = bass(line(quarters(60), bar(bent)));
        // G string fret 7 and a semitone: D#3, 155.5635 Hz (ISO 16)
        double hertz = Measure.hertz(samples, FIRST + RATE, 155.5635);
        assertThat(Measure.cents(hertz, 155.5635)).isCloseTo(0, within(3.0));
    }

    @Test
    void silenceComesAfterTheNote() {
        Note cut = note(f(0, 1), f(1, 4), 5);
        float[] samples = bass(line(quarters(60), bar(cut)));
        assertThat(Measure.decibels(samples, 0, FIRST)).isLessThan(-150);
        assertThat(Measure.decibels(samples, FIRST + RATE * 3 / 2, RATE)).isLessThan(-80);
    }

    @Test
    void blocksOfAnySizeGiveTheSameSamples() {
        for (long seed = 0; seed < 4; seed++) {
            var line = RandomLines.line(seed, 2);
            float[] whole = bass(line, 1 << 16);
            assertThat(bass(line, 512)).as("seed %d", seed).isEqualTo(whole);
            assertThat(bass(line, 1)).as("seed %d", seed).isEqualTo(whole);
        }
    }

    @Test
    void nothingWithoutEndOrNumberComesOutOfRandomLines() {
        for (long seed = 0; seed < 60; seed++) {
            float[] samples = bass(RandomLines.line(seed, 3));
            assertThat(Measure.peak(samples)).as("seed %d", seed).isLessThan(30f);
            assertThat(Math.abs(Measure.mean(samples))).as("seed %d", seed).isLessThan(0.004);
        }
    }
}
