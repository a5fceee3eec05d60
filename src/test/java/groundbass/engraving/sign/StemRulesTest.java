package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import org.junit.jupiter.api.Test;

/** Stems, beams and curves as they are drawn. Sounding E1 stands at -2, D2 at 4, G2 at 7. */
class StemRulesTest {
    @Test // rule: stem-direction
    void stemsPointAwayFromTheMiddleLine() {
        var drawn = Drawn.of("bar 1\n1-4  E0, D0, G0, D0\n");
        assertThat(drawn.stemUp(0)).as("low").isTrue();
        assertThat(drawn.stemUp(1)).as("on the middle line").isFalse();
        assertThat(drawn.stemUp(2)).as("high").isFalse();
    }

    @Test // rule: stem-direction: on the middle line down, unless the neighbours go up
    void theMiddleLineFollowsNeighboursThatGoUp() {
        assertThat(Drawn.of("bar 1\n1-4  E0, D0, E0, E0\n").stemUp(1)).isTrue();
    }

    @Test // rule: stem-direction-chord: E1 at -2 lies six from the middle, G2 at 7 three; a tie goes down
    void theFarthestNoteOfAChordDecides() {
        assertThat(Drawn.of("bar 1\n1  E0+G0\n2-4  rest\n").stemUp(0)).isTrue();
        // A1 at 1 and G2 at 7 are equally far from 4
        var tie = Drawn.of("bar 1\n1  A0+G0\n2-4  rest\n");
        assertThat(tie.box(Kind.STEM, 0).bottom())
                .isGreaterThan(tie.at(Kind.HEAD, 0).y() + 1);
    }

    @Test // rule: stem-direction-beam: G2 at 7 is three from the middle, E1 at -2 six
    void theFarthestNoteUnderABeamDecidesForAll() {
        var drawn = Drawn.of("bar 1\n1  G0, E0\n2-4  rest\n");
        assertThat(drawn.stemUp(0)).isTrue();
        assertThat(drawn.stemUp(1)).isTrue();
    }

    @Test // rule: two-voice-stems: alone G2 at 7 would point down and E1 at -2 up
    void ofTwoVoicesTheUpperPointsUpAndTheLowerDown() {
        var drawn = Drawn.of("bar 1\n1  E0 until 3 + G0\n2  G2\n3  E3 until end + G4\n4  G5\n", Staves.NOTATION_ONLY);
        var up = drawn.of(Kind.STEM).stream()
                .filter(stem -> headAt(drawn, stem.box().bottom()))
                .toList();
        var down = drawn.of(Kind.STEM).stream()
                .filter(stem -> headAt(drawn, stem.box().top()))
                .toList();
        assertThat(up).hasSize(4).allMatch(stem -> drawn.position(stem.box().bottom()) > 4);
        assertThat(down).hasSize(2).allMatch(stem -> drawn.position(stem.box().top()) < 4);
        assertThat(drawn.of(Kind.STEM)).hasSize(6);
    }

    /** Whether a head stands at this height, within the half space that a stem's root is off its middle. */
    private static boolean headAt(Drawn drawn, double y) {
        return drawn.of(Kind.HEAD).stream()
                .anyMatch(head -> Math.abs((head.box().top() + head.box().bottom()) / 2 - y) < 0.25);
    }

    @Test // rule: stem-side, stem-thickness: at the right side up, at the left side down; 0.12 thick
    void stemsStandAtTheSideOfTheirHead() {
        var drawn = Drawn.of("bar 1\n1-4  E0, G0, rest*2\n");
        assertThat(drawn.box(Kind.STEM, 0).right())
                .isCloseTo(drawn.box(Kind.HEAD, 0).right(), within(0.02));
        assertThat(drawn.box(Kind.STEM, 1).left())
                .isCloseTo(drawn.box(Kind.HEAD, 1).left(), within(0.02));
        assertThat(drawn.box(Kind.STEM, 0).width()).isCloseTo(0.12, within(1e-9));
    }

    @Test // rule: flag-place: the flag's origin is the end of the normal stem, flush with its left side
    void flagsHangFromTheEndOfTheStem() {
        var drawn = Drawn.of("bar 1\n1  E0, rest\n2-4  rest\n");
        assertThat(drawn.glyphs(Kind.FLAG)).containsExactly(Glyph.FLAG_8_UP);
        assertThat(drawn.at(Kind.FLAG, 0).x()).isCloseTo(drawn.box(Kind.STEM, 0).left(), within(1e-6));
        assertThat(drawn.at(Kind.FLAG, 0).y()).isCloseTo(drawn.box(Kind.STEM, 0).top(), within(1e-6));
    }

    @Test // rule: dot-beside-flag
    void aDotStandsRightOfTheFlag() {
        var drawn = Drawn.of("bar 1\n1-2  E0*3, rest*5\n3-4  rest\n", Staves.NOTATION_ONLY);
        assertThat(drawn.glyphs(Kind.FLAG)).isNotEmpty();
        assertThat(drawn.box(Kind.DOT, 0).left())
                .isGreaterThan(drawn.box(Kind.FLAG, 0).right());
    }

    @Test // rule: beam-on-staff-line: inside the staff a beam sits on, hangs from or straddles a line
    void beamsInsideTheStaffTouchALine() {
        for (var notes : new String[] {"A0, A2", "A0, D0", "D2, G0", "A3, A2", "G0, G2"}) {
            var drawn = Drawn.of("bar 1\n1  " + notes + "\n2-4  rest\n");
            var beam = drawn.box(Kind.BEAM, 0);
            for (double edge : new double[] {beam.top(), beam.bottom()}) {
                double inStaff = edge - drawn.top();
                boolean touches = inStaff < -0.5 || inStaff > 4.5 || crossesLine(beam, drawn.top());
                assertThat(touches).as(notes + " " + inStaff).isTrue();
            }
        }
    }

    private static boolean crossesLine(Box beam, double top) {
        for (int line = 0; line < 5; line++) {
            double y = top + line;
            if (beam.top() <= y + 0.07 && beam.bottom() >= y - 0.07) {
                return true;
            }
        }
        return false;
    }

    @Test // rule: curve-shape: opposite the stem, thin at its ends and thick in its middle
    void aTieLiesOppositeTheStem() {
        var drawn = Drawn.of("bar 1\n1-4  rest*3, E0\nbar 2\n1-4  hold, rest*3\n");
        var tie = (Shape.Curve) drawn.of(Kind.TIE).get(0).shape();
        assertThat(drawn.stemUp(0)).isTrue();
        assertThat(tie.at(0.5).y()).isGreaterThan(drawn.at(Kind.HEAD, 0).y());
        assertThat(tie.ends()).isEqualTo(0.1);
        assertThat(tie.middle()).isEqualTo(0.22);
        assertThat(tie.from().x()).isGreaterThan(drawn.box(Kind.HEAD, 0).right());
        assertThat(tie.to().x()).isLessThan(drawn.box(Kind.HEAD, 1).left());
    }

    @Test // rule: tie-or-slur, slur-side: a slur leads to another note, on the heads' side where the stems agree
    void aSlurLiesOnTheHeadsSide() {
        var drawn = Drawn.of("bar 1\n1-4  E0, E2 hammer, rest*2\n");
        var slur = (Shape.Curve) drawn.of(Kind.SLUR).get(0).shape();
        assertThat(slur.at(0.5).y()).isGreaterThan(drawn.at(Kind.HEAD, 0).y());
        assertThat(drawn.of(Kind.TIE)).isEmpty();
    }
}
