package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeterTest {
    /** rule: beam-simple-metre, beam-compound-metre, beam-grouped-metre, beam-cut-time. */
    @ParameterizedTest
    @CsvSource({
        "4, 4, '[1, 1, 1, 1]', 1/4",
        "3, 4, '[1, 1, 1]', 1/4",
        "2, 2, '[1, 1]', 1/2",
        "3, 8, '[3]', 3/8",
        "6, 8, '[3, 3]', 3/8",
        "12, 8, '[3, 3, 3, 3]', 3/8",
        "5, 8, '[3, 2]', 1/8",
        "7, 8, '[2, 2, 3]', 1/8"
    })
    void hasItsUsualBeatsAndPulse(int counts, int unit, String beats, String pulse) {
        var meter = Meter.of(counts, unit);
        assertThat(meter.beats()).hasToString(beats);
        assertThat(meter.pulse()).hasToString(pulse);
        assertThat(meter.length()).isEqualTo(Fraction.of(counts, unit));
    }

    @Test
    void knowsWhichBeatAMomentLiesIn() {
        var meter = new Meter(8, List.of(3, 2, 2));
        assertThat(meter.beatStart(Fraction.of(4, 8))).isEqualTo(Fraction.of(3, 8));
        assertThat(meter.beatEnd(Fraction.of(4, 8))).isEqualTo(Fraction.of(5, 8));
        assertThat(meter.beatEnd(Fraction.of(6, 8))).isEqualTo(meter.length());
    }

    @Test
    void isWrittenWithItsGroupsOnlyWhereTheyAreUnusual() {
        assertThat(Meter.of(7, 8)).hasToString("7/8");
        assertThat(new Meter(8, List.of(3, 2, 2))).hasToString("7/8 (3+2+2)");
    }

    @Test
    void refusesWhatNobodyCounts() {
        assertThatThrownBy(() -> Meter.of(4, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Meter.of(0, 4)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Meter.of(33, 4)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "1e, 1/16", "1&, 1/8", "1a, 3/16", "4a, 15/16"})
    void countsFallWhereTheyAreSaid(String text, String offset) {
        var count = Count.parse(text).orElseThrow();
        assertThat(count.offset(Meter.COMMON)).hasToString(offset);
        assertThat(Count.at(count.offset(Meter.COMMON), Meter.COMMON)).contains(count);
        assertThat(count).hasToString(text);
    }

    @Test
    void nobodyHasACountForAPlaceInsideATriplet() {
        assertThat(Count.at(Fraction.of(1, 12), Meter.COMMON)).isEmpty();
        assertThat(Count.parse("0")).isEmpty();
        assertThat(Count.parse("1x")).isEmpty();
        assertThat(Count.parse("")).isEmpty();
        assertThat(Count.parse("999")).isEmpty();
    }
}
