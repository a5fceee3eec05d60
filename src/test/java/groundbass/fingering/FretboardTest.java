package groundbass.fingering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.score.Tuning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** rule: fret-distance: millimetres worked out from its formula. */
class FretboardTest {
    private static final Fretboard LONG = new Fretboard(Tuning.STANDARD, 24, Fretboard.LONG);
    private static final Fretboard SHORT = new Fretboard(Tuning.STANDARD, 24, Fretboard.SHORT);

    @ParameterizedTest
    @CsvSource({"1, 48.47, 42.77", "5, 216.63, 191.15", "7, 287.22, 253.43", "12, 431.80, 381.00", "24, 647.70, 571.50"
    })
    void wiresStandWhereTwelveToneTemperamentPutsThem(int fret, double onLong, double onShort) {
        assertThat(LONG.fromNut(fret)).isCloseTo(onLong, within(0.005));
        assertThat(SHORT.fromNut(fret)).isCloseTo(onShort, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"1, 4, 129.7, 114.4", "5, 8, 102.9, 90.8", "5, 9, 133.5, 117.8", "12, 16, 89.1, 78.6"})
    void reachesAreDistancesBetweenWires(int from, int to, double onLong, double onShort) {
        assertThat(LONG.reach(from, to)).isCloseTo(onLong, within(0.05));
        assertThat(SHORT.reach(to, from)).isCloseTo(onShort, within(0.05));
    }

    @Test
    void theTwelfthFretHalvesTheString() {
        assertThat(LONG.fromNut(12)).isCloseTo(Fretboard.LONG / 2, within(1e-9));
    }
}
