package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sheet.Layout;
import groundbass.linetext.LineText;
import groundbass.writing.Writing;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** rule: rolled-chord-sign, chord-bracket. */
class SpreadsTest {
    private static List<Mark> marks(String events, Staves staves) {
        var reading = LineText.read("key C major\nbar 1\n1-2  A0\n3-4  " + events + "\n");
        assertThat(reading.problems()).isEmpty();
        var options = TestWords.options(Paper.A4).with(staves).withLegend(false);
        var page = Layout.of(Writing.of(reading.line()), options).get(0);
        assertThat(Overlaps.in(page)).isEmpty();
        return page.marks();
    }

    private static List<Mark> of(Kind kind, List<Mark> marks) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }

    private static Box around(List<Mark> marks) {
        return marks.stream().map(Mark::box).reduce(Box::union).orElseThrow();
    }

    /** All but those of the note before the chord. */
    private static List<Mark> ofTheChord(Kind kind, List<Mark> marks) {
        var all = of(kind, marks);
        return all.subList(1, all.size());
    }

    private static List<Shape> arrows(List<Mark> marks) {
        return of(Kind.SPREAD, marks).stream()
                .map(Mark::shape)
                .filter(shape -> shape instanceof Shape.Polygon polygon
                        && polygon.corners().size() == 3)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"roll", "roll up", "roll down", "bracket"})
    void itStandsLeftOfAccidentalsAsHighAsTheChord(String word) {
        var marks = marks("A4 + D4 + G6 " + word, Staves.NOTATION_ONLY);
        var sign = around(of(Kind.SPREAD, marks));
        var heads = around(ofTheChord(Kind.HEAD, marks));
        assertThat(of(Kind.ACCIDENTAL, marks)).hasSize(3);
        assertThat(sign.right()).isLessThan(around(of(Kind.ACCIDENTAL, marks)).left());
        // half a space, and what a whole number of waves leaves over: "a little" (ours)
        assertThat(heads.top() - sign.top()).isBetween(-0.5, 0.8);
        assertThat(sign.bottom() - heads.bottom()).isBetween(-0.5, 0.8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"roll", "roll up", "roll down", "bracket"})
    void onTheTablatureItStandsLeftOfTheNumbers(String word) {
        var marks = marks("A4 + D12 + G6 " + word, Staves.TAB_ONLY);
        var sign = around(of(Kind.SPREAD, marks));
        var frets = around(ofTheChord(Kind.FRET, marks));
        assertThat(sign.right()).isLessThan(frets.left());
        assertThat(frets.left() - sign.right()).isLessThan(1);
        assertThat(heightsOf(sign)).isGreaterThan(heightsOf(frets) - 1);
    }

    private static double heightsOf(Box box) {
        return box.bottom() - box.top();
    }

    @Test
    void anArrowSaysTheWayWhereTheEducatorDoesAndDownwardAlways() {
        assertThat(arrows(marks("A3 + D5 roll", Staves.NOTATION_ONLY))).isEmpty();
        var up = marks("A3 + D5 roll up", Staves.NOTATION_ONLY);
        assertThat(arrows(up)).singleElement().satisfies(arrow -> assertThat(
                        arrow.box().top())
                .isEqualTo(around(of(Kind.SPREAD, up)).top()));
        var down = marks("A3 + D5 roll down", Staves.NOTATION_ONLY);
        assertThat(arrows(down)).singleElement().satisfies(arrow -> assertThat(
                        arrow.box().bottom())
                .isEqualTo(around(of(Kind.SPREAD, down)).bottom()));
    }

    @Test
    void twoVoicesHaveOneWave() {
        var marks = marks("A3 until end + D5, D7 until end", Staves.NOTATION_ONLY);
        assertThat(of(Kind.SPREAD, marks)).isEmpty();
        var rolled = marks("A3 until end + D5 roll up, D7 until end", Staves.NOTATION_ONLY);
        assertThat(arrows(rolled)).hasSize(1);
    }

    @Test
    void aBracketIsOpenTowardTheHeads() {
        var strokes = of(Kind.SPREAD, marks("A3 + D5 bracket", Staves.NOTATION_ONLY));
        assertThat(strokes).hasSize(3);
        var upright = strokes.get(0).box();
        assertThat(strokes.subList(1, 3)).allSatisfy(hook -> {
            assertThat(hook.box().right()).isGreaterThan(upright.right());
            assertThat(hook.box().left()).isGreaterThanOrEqualTo(upright.left() - 0.1);
        });
    }
}
