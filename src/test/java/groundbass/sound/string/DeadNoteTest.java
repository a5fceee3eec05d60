package groundbass.sound.string;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A string that is held still and struck: how it is heard, and how it is not. rule: dead-note-sound. */
class DeadNoteTest {
    private static final int RATE = Played.RATE;
    private static final int FIFTY_MS = 2_205;

    /** Between one stroke and the next. */
    private static final int BEAT = RATE / 2;

    private static final int TAKES = 4;

    /** Four strokes through the amplifier that is usual, each after 50 ms of silence and 450 ms long. */
    private static float[][] takes(int string, Technique hand) {
        var notes = new Note[TAKES];
        for (int i = 0; i < TAKES; i++) {
            notes[i] = note(f(i, 4), f(1, 4), Place.dead(string), hand);
        }
        float[] through = amplified(notes);
        var takes = new float[TAKES][BEAT];
        for (int i = 0; i < TAKES; i++) {
            System.arraycopy(through, i * BEAT, takes[i], FIFTY_MS, BEAT - FIFTY_MS);
        }
        return takes;
    }

    private static float[] amplified(Note... notes) {
        float[] strings = Played.from(line(quarters(120), bar(notes)));
        var out = new float[strings.length];
        int[] at = {0};
        new Cabinet(SampleRate.CD, (block, from, count) -> {
                    for (int i = 0; i < count && at[0] < strings.length; i++) {
                        block[from + i] += strings[at[0]++];
                    }
                })
                .render(out, 0, out.length);
        return out;
    }

    @ParameterizedTest
    @EnumSource(
            value = Technique.class,
            names = {"FINGER", "THUMB", "SLAP", "THUMB_UP", "POP", "PICK", "MUTE", "RAKE"})
    void noToneStandsOutOfADeadNote(Technique hand) {
        // rule: dead-note-sound: no tone has a quarter of it, on the whole none a fifth; common practice, no source
        for (int string = 1; string <= 4; string++) {
            double sum = 0;
            for (float[] take : takes(string, hand)) {
                double strongest = Measure.strongest(take, 0, 2 * FIFTY_MS);
                assertThat(strongest).as("string %d", string).isLessThan(0.3);
                sum += strongest;
            }
            assertThat(sum / TAKES).as("string %d", string).isLessThan(0.23);
        }
    }

    @ParameterizedTest
    @CsvSource({"FINGER, 400, 1000", "THUMB, 400, 1000", "MUTE, 400, 1000", "SLAP, 500, 1000", "POP, 700, 1200"})
    void aDeadNoteIsATickAndNoThud(Technique hand, double dull, double bright) {
        // rule: dead-note-sound, as its stroke is dull or bright; a fingered E3 has 141 Hz, a slapped one 457
        for (int string = 1; string <= 4; string++) {
            for (float[] take : takes(string, hand)) {
                assertThat(Measure.centroid(take, 0, 2 * FIFTY_MS))
                        .as("string %d", string)
                        .isBetween(dull, bright);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"4, 3", "3, 5", "2, 5", "1, 5"})
    void aDeadSlapStandsUnderASlap(int string, int fret) {
        // rule: dead-note-sound: 8 to 10 dB over 60 ms; a decibel to each side for the takes is ours
        int sixty = RATE * 60 / 1000;
        double slap =
                Measure.decibels(amplified(note(f(0, 1), f(1, 4), Place.of(string, fret), Technique.SLAP)), 0, sixty);
        for (float[] take : takes(string, Technique.SLAP)) {
            assertThat(slap - Measure.decibels(take, FIFTY_MS, sixty)).isBetween(7.0, 11.0);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Technique.class,
            names = {"FINGER", "SLAP", "POP", "PICK", "MUTE"})
    void aDeadNoteIsShortButNoClick(Technique hand) {
        // rule: dead-note-sound: 90 % of its energy in 12 to 27 ms, 40 dB of it for 50 ms at least; it sets in as
        // flesh gives way, so that no step is a third of its height (ours)
        for (int string = 1; string <= 4; string++) {
            for (float[] take : takes(string, hand)) {
                assertThat(within(take, 0.9)).as("string %d", string).isBetween(0.011, 0.029);
                assertThat(within(take, 0.9999)).as("string %d", string).isBetween(0.03, 0.1);
                assertThat(Measure.steepest(take, FIFTY_MS, BEAT))
                        .as("string %d", string)
                        .isLessThan(Measure.peak(take) / 3);
            }
        }
    }

    /** Seconds in which such a part of its energy is given. */
    private static double within(float[] take, double part) {
        double all = 0;
        for (float sample : take) {
            all += sample * sample;
        }
        double given = 0;
        int i = 0;
        while (given < part * all) {
            given += take[i] * take[i];
            i++;
        }
        return (i - FIFTY_MS) / (double) RATE;
    }

    private static double centroid(float[] samples) {
        return Measure.centroid(samples, 0, FIFTY_MS);
    }

    private static double level(float[] samples) {
        return Measure.decibels(samples, 0, 8_820);
    }

    @ParameterizedTest
    @CsvSource({"4", "3", "2", "1"})
    void aDeadNoteHasNoPitchAndIsOverAtOnce(int string) {
        // rule: dead-note-sound: 60 to 200 ms; -12 dB by a finger, softer still as it is played here
        float[] dead = Played.from(line(quarters(60), bar(note(f(0, 1), f(1, 4), Place.dead(string), Technique.SLAP))));
        float[] slap =
                Played.from(line(quarters(60), bar(note(f(0, 1), f(1, 1), Place.of(string, 0), Technique.SLAP))));
        assertThat(Measure.periodicity(dead, 441, 4_410)).isLessThan(0.5);
        assertThat(Measure.periodicity(slap, 441, 4_410)).isGreaterThan(0.6);
        double start = Measure.decibels(dead, 0, 1_000);
        assertThat(start).isBetween(Measure.decibels(slap, 0, 1_000) - 25, Measure.decibels(slap, 0, 1_000) - 4);
        assertThat(Measure.decibels(dead, RATE / 5, 1_000)).isLessThan(start - 50);
    }

    @Test
    void deadNotesSoundAsTheyAreStruck() {
        // rule: dead-note-sound
        float[] finger = dead(3, Technique.FINGER);
        float[] slap = dead(3, Technique.SLAP);
        float[] pop = dead(3, Technique.POP);
        assertThat(centroid(pop)).isGreaterThan(centroid(finger) * 1.1);
        assertThat(centroid(slap)).isBetween(centroid(finger), centroid(pop));
        assertThat(level(slap) - level(finger)).isBetween(4.0, 12.0);
        assertThat(level(pop) - level(finger)).isBetween(4.0, 12.0);
    }

    @ParameterizedTest
    @EnumSource(
            value = Technique.class,
            names = {"FINGER", "SLAP", "POP", "PICK", "MUTE"})
    void deadNotesAreAboutAsLoudOnEveryString(Technique hand) {
        // rule: dead-note-sound; 4 dB is ours
        double[] levels = IntStream.rangeClosed(1, 4)
                .mapToDouble(string -> Measure.decibels(dead(string, hand), 0, FIFTY_MS))
                .sorted()
                .toArray();
        assertThat(levels[3] - levels[0]).isLessThan(4);
    }

    private static float[] dead(int string, Technique hand) {
        return Played.from(line(quarters(240), bar(note(f(0, 1), f(1, 4), Place.dead(string), hand))));
    }
}
