package groundbass.performance;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.even;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.pickup;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Bar;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Meter;
import groundbass.score.Swing;
import groundbass.score.Tempo;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Expected moments worked out by hand from rule: swing-offbeat. */
class SwungTimeTest {
    private static final Swing EIGHTHS = new Swing(f(1, 8), 2, 1);

    private static List<Fraction> onsets(Swing swing, Meter meter, Bar bar) {
        var header = Header.PLAIN.with(meter).with(new Tempo(100, f(1, 4))).with(Feel.swung(swing));
        var performance = Performance.of(line(header, bar));
        return performance.notes().stream()
                .map(note -> note.when().at().minus(performance.start()))
                .toList();
    }

    @Test
    void eighthsAtTwoToOneFallOnTheThirdTripletPart() {
        // tick 320 of 480 is 2/3 of a quarter, 1/6 of a whole note (rule: swing-offbeat)
        assertThat(onsets(EIGHTHS, Meter.COMMON, even(8))).startsWith(f(0, 1), f(1, 6), f(1, 4), f(1, 4).plus(f(1, 6)));
    }

    @Test
    void sixteenthsAtTwoToOneSwingInsideTheEighth() {
        // tick 160 of 240 is 2/3 of an eighth, 1/12 of a whole note (rule: swing-offbeat)
        assertThat(onsets(new Swing(f(1, 16), 2, 1), Meter.COMMON, even(16)))
                .startsWith(f(0, 1), f(1, 12), f(1, 8), f(1, 8).plus(f(1, 12)));
    }

    @Test
    void threeToTwoPutsTheSecondEighthAtTick288() {
        // 288 of 1920 ticks in a whole note (rule: swing-offbeat)
        assertThat(onsets(new Swing(f(1, 8), 3, 2), Meter.COMMON, even(8)).get(1))
                .isEqualTo(f(288, 1920));
    }

    @Test
    void aTripletKeepsItsThirds() {
        // ticks 0, 160, 320: a triplet of eighths, 480 ticks in three
        assertThat(onsets(EIGHTHS, Meter.COMMON, even(12))).startsWith(f(0, 1), f(1, 12), f(1, 6), f(1, 4));
    }

    @Test
    void aQuarterTripletOverTwoBeatsKeepsItsThirds() {
        assertThat(onsets(EIGHTHS, Meter.COMMON, even(6))).startsWith(f(0, 1), f(1, 6), f(1, 3), f(1, 2));
    }

    @Test
    void aSixteenthTripletFillsTheShortHalfOfItsPair() {
        // the short half runs from 1/6 to 1/4: thirds of 1/12
        var bar = bar(
                note(f(0, 1), f(1, 8), 5),
                note(f(3, 24), f(1, 24), 5),
                note(f(4, 24), f(1, 24), 5),
                note(f(5, 24), f(1, 24), 5));
        assertThat(onsets(EIGHTHS, Meter.COMMON, bar)).containsExactly(f(0, 1), f(6, 36), f(7, 36), f(8, 36));
    }

    @Test
    void theNoteLeftOverInAGroupOfThreeStays() {
        // 7/8 as 2+2+3: pairs at 0, 2, 4; the seventh eighth has no partner
        var meter = Meter.of(7, 8);
        var notes =
                IntStream.range(0, 7).mapToObj(i -> note(f(i, 8), f(1, 8), 5)).toList();
        assertThat(onsets(EIGHTHS, meter, Bar.of(meter, notes)))
                .containsExactly(f(0, 1), f(1, 6), f(1, 4), f(5, 12), f(1, 2), f(2, 3), f(3, 4));
    }

    @Test
    void compoundBeatsHaveNoPairsOfTheirCounts() {
        var meter = Meter.of(12, 8);
        var notes = List.of(note(f(0, 1), f(1, 8), 5), note(f(1, 8), f(1, 8), 5), note(f(2, 8), f(1, 8), 5));
        assertThat(onsets(EIGHTHS, meter, Bar.of(meter, notes))).containsExactly(f(0, 1), f(1, 8), f(2, 8));
    }

    @Test
    void aPickupOnTheLastAndSwings() {
        var header = Header.PLAIN.with(Feel.swung(EIGHTHS));
        var line = line(header, pickup(Meter.COMMON, f(7, 8), note(f(7, 8), f(1, 8), 5)), even(8));
        // a bar of count-in, its last pair from 3/4: 3/4 + 1/6
        assertThat(Performance.of(line).notes().get(0).when().at()).isEqualTo(f(11, 12));
    }
}
