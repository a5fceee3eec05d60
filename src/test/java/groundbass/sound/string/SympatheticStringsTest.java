package groundbass.sound.string;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import groundbass.sound.string.IdleTimes.Span;
import groundbass.sound.unit.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

/** rule: sympathetic-strings. A bar of count-in at 60 lasts 4 s. */
class SympatheticStringsTest {
    private static final int RATE = 44_100;
    private static final int FIRST = 4 * RATE;

    private static List<TimedNote> played(Note... notes) {
        return Performance.of(line(quarters(60), bar(notes))).notes();
    }

    private static Note on(int string, int fret, int from, int length) {
        return note(f(from, 4), f(length, 4), Place.of(string, fret), Technique.FINGER);
    }

    private static Unit lowest(List<TimedNote> notes) {
        return new BassString(SampleRate.CD, 4, 28, notes);
    }

    private static float[] rendered(Unit unit) {
        var out = new float[FIRST + 5 * RATE];
        unit.render(out, 0, out.length);
        return out;
    }

    /** What rings along, in decibels under what is played, one second after its start. */
    private static double along(int fret) {
        var notes = played(on(4, fret, 0, 4));
        float[] alone = rendered(lowest(notes));
        float[] all = rendered(new SympatheticStrings(SampleRate.CD, Tuning.STANDARD, notes, lowest(notes)));
        for (int i = 0; i < all.length; i++) {
            all[i] -= alone[i];
        }
        assertThat(Measure.decibels(all, FIRST + RATE * 9 / 2, 4_410)).isLessThan(-100);
        return Measure.decibels(all, FIRST + RATE, 8_820) - Measure.decibels(alone, FIRST + RATE, 8_820);
    }

    @Test
    void whatSharesItsPartialsRingsAlong() {
        // G1 is an octave under the open G, A1 the open A; F1 and F#1 share nothing below the fifth partial with any
        assertThat(along(3)).isBetween(-42.0, -30.0);
        assertThat(along(5)).isBetween(-42.0, -30.0);
        assertThat(along(1)).isLessThan(-50);
        assertThat(along(2)).isLessThan(-50);
    }

    @Test
    void aStringLiesIdleWhileOthersAreHeardAndItIsNotPlayed() {
        // the gate of a finger's note is nine tenths, rounded up to a beat where the next one follows: a breath is none
        var notes = played(on(4, 3, 0, 1), on(1, 7, 1, 1), on(4, 3, 2, 1));
        long secondEnd = SampleRate.CD.at(notes.get(1).when().end());
        long lastEnd = SampleRate.CD.at(notes.get(2).when().end());
        assertThat(IdleTimes.of(SampleRate.CD, 1, notes))
                .containsExactly(new Span(FIRST, FIRST + RATE), new Span(secondEnd, lastEnd));
        assertThat(IdleTimes.of(SampleRate.CD, 2, notes)).containsExactly(new Span(FIRST, lastEnd));
    }

    @Test
    void nothingRingsAlongInARest() {
        var notes = played(on(4, 3, 0, 1), on(4, 3, 3, 1));
        assertThat(IdleTimes.of(SampleRate.CD, 1, notes))
                .containsExactly(
                        new Span(FIRST, SampleRate.CD.at(notes.get(0).when().end())),
                        new Span(
                                FIRST + 3 * RATE,
                                SampleRate.CD.at(notes.get(1).when().end())));
    }
}
