package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sheet.Layout;
import groundbass.linetext.LineText;
import groundbass.writing.Writing;
import java.util.List;
import org.junit.jupiter.api.Test;

/** rule: octave-sign-when-high. */
class OttavasTest {
    private static List<Mark> marks(String text, Staves staves) {
        var line = LineText.read(text).line();
        return Layout.of(Writing.of(line), TestWords.options(Paper.A4).with(staves))
                .get(0)
                .marks();
    }

    private static List<Mark> of(Kind kind, List<Mark> marks) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }

    @Test // rule: octave-sign-when-high: the heads stand seven positions, three and a half spaces, lower
    void aLongHighPassageIsWrittenAnOctaveLower() {
        var marks = marks("bar 1\n1-4 G20, G22, G21, G24\n", Staves.BOTH);
        assertThat(of(Kind.OTTAVA, marks)).isNotEmpty();
        // G24 sounds G4 and is written G5, position 21 (rule: staff-positions); an octave lower 14
        var highest = of(Kind.HEAD, marks).get(3);
        var staff = of(Kind.STAFF_LINE, marks).get(0).box();
        double top = staff.top() + Measures.STAFF_LINE / 2;
        double y = ((Shape.Sign) highest.shape()).at().y();
        assertThat(y - top).isEqualTo(Measures.y(14));
        assertThat(of(Kind.LEDGER, marks)).hasSizeLessThanOrEqualTo(4 * 3);
    }

    @Test
    void theSignStandsOverItsNotesAndReachesFromTheFirstToTheLast() {
        var marks = marks("bar 1\n1-4 E0*4, G20, G22, G21, G24\n", Staves.NOTATION_ONLY);
        var sign = of(Kind.OTTAVA, marks).stream()
                .map(Mark::box)
                .reduce(Box::union)
                .orElseThrow();
        var heads = of(Kind.HEAD, marks);
        assertThat(sign.left())
                .isBetween(heads.get(0).box().right(), heads.get(1).box().right());
        assertThat(sign.right()).isGreaterThan(heads.get(4).box().right());
        assertThat(sign.bottom()).isLessThan(heads.get(4).box().top());
    }

    @Test // rule: octave-sign-when-high: long passages, not a single note
    void aFewHighNotesKeepTheirLedgerLines() {
        assertThat(of(Kind.OTTAVA, marks("bar 1\n1-4 G24, E0, G24, E0\n", Staves.BOTH)))
                .isEmpty();
    }

    @Test // rule: octave-sign-when-high: up to about four ledger lines are read without help
    void fourLedgerLinesNeedNoSign() {
        // G17 sounds C4 and is written C5, position 17: four ledger lines
        assertThat(of(Kind.OTTAVA, marks("bar 1\n1-4 G15, G17, G15, G17\n", Staves.BOTH)))
                .isEmpty();
    }

    @Test
    void theTablatureNeedsNone() {
        assertThat(of(Kind.OTTAVA, marks("bar 1\n1-4 G20, G22, G21, G24\n", Staves.TAB_ONLY)))
                .isEmpty();
    }

    @Test // rule: octave-sign-when-high: the beats with one voice keep their sign beside one that has two
    void aBeatWithTwoVoicesTakesTheSignFromNoOther() {
        var marks = marks(
                "bar 1\n1 G24, G23, G22, G21\n2 G19, G21\n3 rest\n4 E0 until end + G19, G24\n", Staves.NOTATION_ONLY);
        var sign = of(Kind.OTTAVA, marks).stream().map(Mark::box).reduce(Box::union);
        assertThat(sign).isPresent();
        var heads = of(Kind.HEAD, marks);
        assertThat(sign.orElseThrow().right())
                .isGreaterThan(heads.get(5).box().right())
                .isLessThan(heads.get(6).box().left());
        // G24 is written G5, position 21, or an octave lower 14: seven positions of half a space
        var last = heads.stream().mapToDouble(head -> head.box().top()).min().orElseThrow();
        assertThat(heads.get(0).box().top() - last).isCloseTo(3.5, within(1e-9));
    }

    @Test // rule: octave-sign-when-high: one lower note between high ones ends no passage, two others do
    void aPassageKeepsItsSignOverALowerNote() {
        var one = marks("bar 1\n1 G21, G20, G19, G9\n2 G21, G20, G24, G22\n3-4 rest\n", Staves.NOTATION_ONLY);
        assertThat(of(Kind.OTTAVA, one).stream().filter(mark -> mark.shape() instanceof Shape.Sign))
                .hasSize(1);
        var sign =
                of(Kind.OTTAVA, one).stream().map(Mark::box).reduce(Box::union).orElseThrow();
        assertThat(sign.left()).isLessThan(of(Kind.HEAD, one).get(0).box().right());
        var low = marks("bar 1\n1 G21, G20, G19, G24\n2 A0, E0, G24, G22\n3-4 G24, G23\n", Staves.NOTATION_ONLY);
        assertThat(of(Kind.OTTAVA, low).stream().filter(mark -> mark.shape() instanceof Shape.Sign))
                .hasSize(2);
    }

    @Test // found by random lines: a harmonic near the bridge lies above the octaves that have numbers
    void theHighestHarmonicFindsItsPlace() {
        assertThat(of(Kind.HEAD, marks("strings E A D G8\nbar 1\n1-4 G12 harmonic at 24\n", Staves.BOTH)))
                .hasSize(1);
    }
}
