package groundbass.writing;

import static groundbass.writing.Rhythms.A3;
import static groundbass.writing.Rhythms.note;
import static groundbass.writing.Rhythms.notes;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Bar;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** rule: simile-signs. */
class SimileTest {
    private static final Bar FIRST = Bar.of(Meter.COMMON, notes("1/4x4"));

    private static List<Boolean> similes(Bar... bars) {
        return Writing.of(new Line(Header.PLAIN, Arrays.asList(bars))).bars().stream()
                .map(WrittenBar::simile)
                .toList();
    }

    @Test
    void aBarWrittenAsTheOneBeforeIsASimile() {
        assertThat(similes(FIRST, FIRST.with(Copy.of(1)), FIRST.with(Copy.of(2))))
                .containsExactly(false, true, true);
    }

    @Test
    void aBarThatOnlyHappensToBeTheSameIsNot() {
        assertThat(similes(FIRST, FIRST)).containsExactly(false, false);
    }

    @Test
    void norOneOfAnEarlierBarOrOfAPart() {
        assertThat(similes(FIRST, FIRST, FIRST.with(Copy.of(1)))).containsExactly(false, false, false);
        assertThat(similes(FIRST, FIRST.with(Copy.of(1, Fraction.ZERO, Fraction.of(1, 4)))))
                .containsExactly(false, false);
    }

    @Test
    void norOneThatWasChanged() {
        var changed = Bar.of(Meter.COMMON, notes("1/2 1/2")).with(Copy.of(1));
        assertThat(similes(FIRST, changed)).containsExactly(false, false);
    }

    @Test
    void norOneAfterATieOverTheBarLine() {
        var held = Bar.of(Meter.COMMON, List.of(note("1/2", "3/4", A3)));
        var last = Bar.of(Meter.COMMON, List.of());
        assertThat(similes(held, held.with(Copy.of(1)), last)).containsExactly(false, false, false);
    }
}
