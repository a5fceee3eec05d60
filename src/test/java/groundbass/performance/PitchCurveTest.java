package groundbass.performance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import groundbass.performance.PitchCurve.Point;
import groundbass.score.Fraction;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import java.util.List;
import org.junit.jupiter.api.Test;

class PitchCurveTest {
    private static final When SECOND = new When(Fraction.ZERO, Fraction.ONE, 0, 1);

    @Test
    void runsStraightBetweenPointsAndStandsStillOutside() {
        var curve = new PitchCurve(List.of(new Point(1, 0), new Point(2, 4)), false);
        assertThat(curve.at(0)).isZero();
        assertThat(curve.at(1.25)).isEqualTo(1);
        assertThat(curve.at(3)).isEqualTo(4);
        assertThat(curve.reach()).isEqualTo(4);
    }

    @Test
    void pointsRunForward() {
        assertThatThrownBy(() -> new PitchCurve(List.of(new Point(2, 0), new Point(1, 0)), false))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void vibratoSetsInLate() {
        // 150 ms at 5 turns a second: a quarter turn later it stands at its width (common practice, no source)
        var curve = new PitchCurve(List.of(), true);
        assertThat(curve.at(0.1)).isZero();
        assertThat(curve.at(0.2)).isCloseTo(0.2, within(1e-9));
    }

    @Test
    void aSlideFromBelowNeverStartsBehindTheNut() {
        assertThat(new PitchCurve(List.of(Glide.in(SlideIn.BELOW, 7, SECOND)), false).at(0))
                .isEqualTo(-3);
        assertThat(new PitchCurve(List.of(Glide.in(SlideIn.BELOW, 2, SECOND)), false).at(0))
                .isEqualTo(-2);
        assertThat(new PitchCurve(List.of(Glide.in(SlideIn.ABOVE, 2, SECOND)), false).at(0))
                .isEqualTo(3);
    }

    @Test
    void aSlideGoesFretByFretAtTheTempo() {
        // rule: slide-by-frets. A whole note of one second: a sixteenth is 62.5 ms, a step of four frets 15.625
        var slid = new PitchCurve(List.of(Glide.to(4, PitchCurve.FLAT, SECOND)), false);
        double from = 1 - 0.0625;
        assertThat(slid.at(from)).isZero();
        for (int fret = 0; fret < 4; fret++) {
            assertThat(slid.at(from + 0.015_625 * (fret + 0.3))).isCloseTo(fret, within(1e-9));
        }
        assertThat(slid.at(1)).isEqualTo(4);
        // twice as slow, twice as long
        var slower = new PitchCurve(
                List.of(Glide.to(4, PitchCurve.FLAT, new When(Fraction.ZERO, Fraction.ONE, 0, 2))), false);
        assertThat(slower.at(2 - 0.125 * 0.7)).isCloseTo(1, within(1e-9));
    }

    @Test
    void aSlideOffEndsTheNoteOnTheMove() {
        var down = new PitchCurve(List.of(Glide.off(SlideOff.DOWN, 4, PitchCurve.FLAT, SECOND)), false);
        assertThat(down.at(0.5)).isZero();
        assertThat(down.at(1)).isEqualTo(-4);
        assertThat(new PitchCurve(List.of(Glide.off(SlideOff.UP, 4, PitchCurve.FLAT, SECOND)), false).at(1))
                .isEqualTo(5);
    }
}
