package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sheet.Layout;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where ties, slurs and slides begin and end. */
class CurveRulesTest {
    private static Shape.Curve curve(Mark mark) {
        return (Shape.Curve) mark.shape();
    }

    private static Shape.Stroke stroke(Mark mark) {
        return (Shape.Stroke) mark.shape();
    }

    private static double y(Drawn drawn, int head) {
        return drawn.at(Kind.HEAD, head).y();
    }

    @Test // rule: curve-at-its-heads; D5 under G5 becomes D7 under G5
    void aSlurBelongsToTheHeadThatMoves() {
        var drawn = Drawn.of("bar 1\n1-2  D5+G5\n3-4  D7 hammer + G5\n", Staves.NOTATION_ONLY);
        var slur = curve(drawn.of(Kind.SLUR).get(0));
        double below = y(drawn, 0);
        assertThat(y(drawn, 1)).isLessThan(below);
        assertThat(slur.from().y()).isGreaterThan(below);
        assertThat(slur.to().y()).isCloseTo(y(drawn, 2), within(1.0)).isGreaterThan(y(drawn, 3));
    }

    @Test // rule: curve-at-its-heads, slur-leans: a space farther where a sign is passed, not at the tip of a stem
    void aSlurBetweenDifferentStemsStartsAtItsHeads() {
        var drawn = Drawn.of("bar 1\n1-2  G1, G3 hammer, D2, D0 pull\n3-4 A3, A5 hammer, A7 hammer, A5 pull\n");
        var slurs = drawn.of(Kind.SLUR);
        var heads = drawn.of(Kind.HEAD);
        assertThat(slurs).isNotEmpty();
        for (var slur : slurs.subList(0, slurs.size() / 2)) {
            assertThat(heads)
                    .anyMatch(head -> Math.abs(head.box().middle()
                                            - curve(slur).from().x())
                                    < 1.2
                            && Math.abs(middle(head) - curve(slur).from().y()) <= 1.86);
        }
    }

    private static double middle(Mark mark) {
        return (mark.box().top() + mark.box().bottom()) / 2;
    }

    /** In lines by chance, one in twenty-five at most has something on both sides of its head and goes round it. */
    @Test // rule: curve-at-its-heads
    void aTieStaysWithinASpaceOfItsHead() {
        var far = new ArrayList<String>();
        int ties = 0;
        for (long seed = 0; seed < 150; seed++) {
            var options = TestWords.options(Paper.A4).with(Staves.NOTATION_ONLY);
            for (var page : Layout.of(Writing.of(RandomLines.line(seed)), options)) {
                var heads = page.marks().stream()
                        .filter(mark -> mark.kind() == Kind.HEAD)
                        .toList();
                for (var tie : page.marks()) {
                    if (tie.kind() == Kind.TIE) {
                        ties++;
                        if (heads.stream().noneMatch(head -> isAt(curve(tie), head, tie))) {
                            far.add("seed " + seed + ": " + tie);
                        }
                    }
                }
            }
        }
        assertThat(ties).isGreaterThan(200);
        assertThat(far).as(ties + " ties").hasSizeLessThanOrEqualTo(ties / 25);
    }

    private static boolean isAt(Shape.Curve tie, Mark head, Mark mark) {
        return head.owner().equals(mark.owner())
                && (Math.abs(middle(head) - tie.from().y()) <= 1
                        || Math.abs(middle(head) - tie.to().y()) <= 1);
    }

    private static final String TIES = """
            bar 1
            1    A3, A3, A3, A5
            2    hold, A7
            3-4  D9
            bar 2
            1-4  hold
            """;

    /** Two spaces long at most: half a space high at most; the longest less than one. */
    @Test // rule: tie-flat
    void aTieIsFlat() {
        var ties = Drawn.of(TIES, Staves.NOTATION_ONLY).of(Kind.TIE);
        assertThat(ties).hasSize(2).allSatisfy(mark -> {
            var tie = curve(mark);
            double length = tie.to().x() - tie.from().x();
            double height = Math.abs(tie.at(0.5).y() - tie.from().y());
            assertThat(height).as("over " + length).isBetween(0.3, length <= 2 ? 0.5 : 1);
            assertThat(height / length).as("no half circle").isLessThan(0.3);
        });
    }

    @Test // rule: tie-flat: its middle, 0.22 thick, is not on a staff line of 0.13
    void theMiddleOfATieKeepsOffTheLines() {
        var notes = List.of("E1", "E3", "A0", "A2", "A3", "D0", "D2", "D3", "D5", "G2", "G4");
        for (var note : notes) {
            for (var held : List.of("1    hold\n2-4  rest", "1-2  hold\n3-4  rest", "1-4  hold")) {
                var drawn = Drawn.of("bar 1\n1-3  A0\n4    " + note + "\nbar 2\n" + held + "\n", Staves.NOTATION_ONLY);
                var ties = drawn.of(Kind.TIE);
                assertThat(ties).hasSize(1);
                double middle = curve(ties.get(0)).at(0.5).y() - drawn.top();
                double line = Math.rint(middle);
                assertThat(line < 0 || line > 4 || Math.abs(middle - line) > 0.175)
                        .as(note + ": " + middle)
                        .isTrue();
            }
        }
    }

    /** How far beyond the middle of its length a curve stands off the line between its ends the farthest. */
    private static double leaning(Shape.Curve curve) {
        double farthest = 0;
        double at = 0;
        double slope = (curve.to().y() - curve.from().y())
                / (curve.to().x() - curve.from().x());
        for (int i = 1; i < 100; i++) {
            var point = curve.at(i / 100.0);
            double off = Math.abs(point.y()
                    - curve.from().y()
                    - slope * (point.x() - curve.from().x()));
            if (off > farthest) {
                farthest = off;
                at = point.x();
            }
        }
        return at - (curve.from().x() + curve.to().x()) / 2;
    }

    @Test // rule: slur-leans; D7 to D12 and back have their stems down and their slurs above
    void aSlurAboveLeansToItsHigherNote() {
        var drawn = Drawn.of("bar 1\n1-2  D7\n3-4  D12 hammer\nbar 2\n1-4  D7 pull\n", Staves.NOTATION_ONLY);
        var slurs = drawn.of(Kind.SLUR);
        assertThat(slurs).hasSize(2).allMatch(slur -> curve(slur).isAbove());
        assertThat(leaning(curve(slurs.get(0)))).isGreaterThan(0.02);
        assertThat(leaning(curve(slurs.get(1)))).isLessThan(-0.02);
    }

    @Test // rule: slur-leans; E1 to A2 have their stems up and their slur below
    void aSlurBelowLeansToItsLowerNote() {
        var drawn = Drawn.of("bar 1\n1-2  E1\n3-4  E7 hammer\n", Staves.NOTATION_ONLY);
        var slur = curve(drawn.of(Kind.SLUR).get(0));
        assertThat(slur.isAbove()).isFalse();
        assertThat(leaning(slur)).isLessThan(-0.02);
    }

    @Test // rule: slur-leans: no half circle, which is half as high as it is long, also over or under a sign
    void aSlurAcrossASignStaysGentle() {
        for (var pair : List.of("D2, D4 hammer", "A3, A4 as C# slide", "D6 as Ab, D7 as A hammer")) {
            var drawn = Drawn.of("key D major\nbar 1\n1  " + pair + "\n2-4  rest\n", Staves.NOTATION_ONLY);
            assertThat(drawn.of(Kind.SLUR)).hasSize(1);
            var slur = curve(drawn.of(Kind.SLUR).get(0));
            double level = (slur.from().y() + slur.to().y()) / 2;
            double height = Math.abs(slur.at(0.5).y() - level);
            assertThat(height / (slur.to().x() - slur.from().x())).as(pair).isLessThan(0.36);
        }
    }

    /** rule: curve-shape: 0.1 thick at its ends, 0.22 in its middle. */
    @Test
    void aCurveIsAsThickAsTheRuleSays() {
        var outline =
                curve(Drawn.of(TIES, Staves.NOTATION_ONLY).of(Kind.TIE).get(0)).lens();
        assertThat(distance(outline.get(0), outline.get(7))).isCloseTo(0.1, within(1e-9));
        assertThat(distance(outline.get(3), outline.get(4))).isCloseTo(0.1, within(1e-9));
        assertThat(distance(middle(outline.subList(0, 4)), middle(outline.subList(4, 8))))
                .isCloseTo(0.22, within(1e-9));
    }

    /** Of a cubic: an eighth of its ends and three eighths of its control points. */
    private static Point middle(List<Point> cubic) {
        return new Point(
                (cubic.get(0).x()
                                + 3 * cubic.get(1).x()
                                + 3 * cubic.get(2).x()
                                + cubic.get(3).x())
                        / 8,
                (cubic.get(0).y()
                                + 3 * cubic.get(1).y()
                                + 3 * cubic.get(2).y()
                                + cubic.get(3).y())
                        / 8);
    }

    private static double distance(Point one, Point other) {
        return Math.hypot(one.x() - other.x(), one.y() - other.y());
    }

    @Test // rule: curve-at-its-heads
    void aTieBetweenDifferentStemsLiesAbove() {
        var held = Drawn.of("bar 1\n1  E3\n2  E3, A3\n3  hold, G7\n4  rest\n", Staves.NOTATION_ONLY);
        assertThat(held.of(Kind.TIE)).hasSize(1);
        double head = y(held, 2);
        assertThat(held.stemUp(2)).isNotEqualTo(held.stemUp(3));
        assertThat(curve(held.of(Kind.TIE).get(0)).at(0.5).y()).isLessThan(head);
    }

    private static final String OVER_A_BREAK = "key Eb major\nbar 1\n1-4  E12\nnew system\nbar 2\n1-4  E5 slide\n";

    @Test // rule: curve-over-break, slur-letter-once
    void aSlideOverABreakIsDrawnOnBothSystems() {
        var drawn = Drawn.of(OVER_A_BREAK);
        var slides = drawn.of(Kind.SLIDE);
        assertThat(slides).hasSize(4).allSatisfy(slide -> assertThat(
                        stroke(slide).to().y())
                .as("falls")
                .isGreaterThan(stroke(slide).from().y()));
        assertThat(drawn.of(Kind.SLUR)).hasSize(4);
        assertThat(drawn.texts(Kind.SLUR_LETTER)).containsExactly("sl.");
    }

    @Test // rule: curve-over-break
    void whatComesOverABreakStartsRightOfTheSignature() {
        for (var text : List.of(
                OVER_A_BREAK,
                OVER_A_BREAK.replace("slide", "pull"),
                "key Eb major\nbar 1\n1-3 rest\n4  E12\nnew system\nbar 2\n1-4  hold\n")) {
            var drawn = Drawn.of(text, Staves.NOTATION_ONLY);
            double right = drawn.of(Kind.KEY).stream()
                    .mapToDouble(key -> key.box().right())
                    .max()
                    .orElseThrow();
            double second = drawn.box(Kind.CLEF, 1).top();
            var after = drawn.marks().stream()
                    .filter(mark -> List.of(Kind.TIE, Kind.SLUR, Kind.SLIDE).contains(mark.kind()))
                    .filter(mark -> mark.box().top() > second - 2)
                    .toList();
            assertThat(after).isNotEmpty().allSatisfy(mark -> {
                assertThat(mark.box().left()).isGreaterThan(right);
                assertThat(mark.box().width()).isGreaterThan(1.5);
            });
        }
    }

    @Test // rule: grace-note-technique
    void aGraceSlurLiesAtItsHeads() {
        var drawn = Drawn.of("bar 1\n1-4  D5 hammer from 3, D5, E3 hammer from 1, E3\n", Staves.NOTATION_ONLY);
        assertThat(drawn.of(Kind.SLUR)).hasSize(2);
        for (var mark : drawn.of(Kind.SLUR)) {
            var slur = curve(mark);
            assertThat(drawn.of(Kind.HEAD))
                    .anyMatch(head -> Math.abs(middle(head) - slur.from().y()) < 1
                            && Math.abs(head.box().middle() - slur.from().x()) < 1);
            assertThat(drawn.of(Kind.HEAD))
                    .anyMatch(head -> Math.abs(middle(head) - slur.to().y()) < 1.01
                            && Math.abs(head.box().middle() - slur.to().x()) < 1.2);
        }
    }

    @Test // rule: grace-note-technique, also where the sign of the note stands between
    void aGraceSlurPassesUnderASign() {
        for (var note : List.of("A4 as C# hammer from 2", "A4 as Db hammer from 2", "D6 as Ab hammer from 4")) {
            var drawn = Drawn.of("bar 1\n1-4  " + note + ", D0, A0, A3\n", Staves.NOTATION_ONLY);
            assertThat(drawn.glyphs(Kind.ACCIDENTAL)).as(note).isNotEmpty();
            assertThat(drawn.of(Kind.SLUR)).hasSize(1);
            var slur = curve(drawn.of(Kind.SLUR).get(0));
            var grace =
                    drawn.box(Kind.HEAD, 0).width() < drawn.box(Kind.HEAD, 1).width() ? 0 : 1;
            assertThat(slur.from().x())
                    .as(note)
                    .isLessThan(drawn.box(Kind.HEAD, grace).right());
            assertThat(slur.to().x())
                    .as(note)
                    .isGreaterThan(drawn.box(Kind.HEAD, 1 - grace).left() - 0.35);
            assertThat(drawn.of(Kind.ACCIDENTAL))
                    .allSatisfy(sign -> assertThat(slur.pieces()).noneMatch(piece -> piece.overlaps(sign.box())));
        }
    }

    @Test // rule: grace-note-technique
    void aGraceNoteShowsItsTechnique() {
        var hammer = Drawn.of("bar 1\n1-4  D5 hammer from 3\n");
        assertThat(hammer.texts(Kind.SLUR_LETTER)).containsExactly("H");
        assertThat(hammer.of(Kind.SLIDE)).isEmpty();
        var pull = Drawn.of("bar 1\n1-4  D5 pull from 7\n");
        assertThat(pull.texts(Kind.SLUR_LETTER)).containsExactly("P");
        var slide = Drawn.of("bar 1\n1-4  D5 slide from 3\n");
        assertThat(slide.texts(Kind.SLUR_LETTER)).containsExactly("sl.");
        assertThat(slide.of(Kind.SLIDE)).hasSize(2).allSatisfy(line -> assertThat(
                        stroke(line).to().y())
                .as("rises")
                .isLessThan(stroke(line).from().y()));
    }

    @Test // rule: slur-letter-once; read, so clear of the bar line that runs through both staves
    void noBarlineStrikesALetterOut() {
        var drawn = Drawn.of("bar 1\n1-3  rest\n4  A3, A5\nbar 2\n1-4  A7 slide\n");
        var letter = drawn.box(Kind.SLUR_LETTER, 0);
        assertThat(drawn.texts(Kind.SLUR_LETTER)).containsExactly("sl.");
        assertThat(drawn.of(Kind.BARLINE)).noneMatch(line -> line.box().overlaps(letter));
    }
}
