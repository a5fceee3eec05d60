package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.options.TechniqueLetters.Letter;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sign.around.SwingSign;
import groundbass.linetext.LineText;
import groundbass.score.Swing;
import groundbass.score.Technique;
import groundbass.writing.Writing;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What lasts over several notes, and the sign for swing. */
class SpansTest {
    private static List<Mark> marks(String bar, Staves staves) {
        var line = LineText.read("bar 1\n" + bar).line();
        var options = TestWords.options(Paper.A4).with(staves).withLegend(false);
        return Layout.of(Writing.of(line), options).get(0).marks();
    }

    private static List<Mark> of(Kind kind, List<Mark> marks) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }

    private static List<String> texts(List<Mark> marks) {
        return marks.stream()
                .filter(mark -> mark.shape() instanceof Shape.Run)
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
    }

    @Test // rule: palm-mute-line: palm mute, P.M. with a dashed line above the tablature
    void aPalmMuteIsWrittenOnceWithALineOverItsNotes() {
        var marks = marks("1-2  E0 mute, E0 mute, E3 mute, E0 mute\n3-4  E5\n", Staves.BOTH);
        var sign = of(Kind.TECHNIQUE, marks);
        assertThat(texts(sign)).containsExactly("P.M.");
        var box = sign.stream().map(Mark::box).reduce(Box::union).orElseThrow();
        var numbers = of(Kind.FRET, marks);
        assertThat(box.left())
                .isBetween(numbers.get(0).box().left() - 1, numbers.get(0).box().right());
        assertThat(box.right())
                .isBetween(numbers.get(3).box().left(), numbers.get(4).box().left());
        assertThat(box.bottom()).isLessThan(numbers.get(0).box().top());
    }

    @Test
    void anotherTechniqueEndsTheLine() {
        var marks = marks("1-2  E0 mute, E0 slap, E3 mute, E0 mute\n3-4  rest\n", Staves.BOTH);
        assertThat(texts(of(Kind.TECHNIQUE, marks)))
                .containsOnlyOnce("T")
                .hasSize(3)
                .contains("P.M.");
    }

    @Test // rule: let-ring-line: let ring, dashed line
    void ringingNotesThatFollowOneAnotherShareOneLine() {
        var marks = marks("1-2  A2 ring, D2 ring, G4 ring, G2\n3-4  rest\n", Staves.BOTH);
        assertThat(texts(of(Kind.RING, marks))).containsExactly("let ring");
        assertThat(of(Kind.RING, marks)).hasSizeGreaterThan(2);
    }

    @Test // rule: vibrato-wave: vibrato is a wavy line above the notes and on the tablature
    void aVibratoStandsOverBothStaves() {
        var alone = of(Kind.VIBRATO, marks("1-4  D5 vibrato\n", Staves.NOTATION_ONLY));
        assertThat(alone).hasSizeGreaterThan(2);
        var marks = marks("1-4  D5 vibrato\n", Staves.BOTH);
        var waves = of(Kind.VIBRATO, marks);
        assertThat(waves).hasSize(2 * alone.size());
        double head = of(Kind.HEAD, marks).get(0).box().top();
        double number = of(Kind.FRET, marks).get(0).box().top();
        assertThat(waves).filteredOn(wave -> wave.box().bottom() < head).hasSameSizeAs(alone);
        assertThat(waves)
                .filteredOn(wave -> wave.box().top() > head && wave.box().bottom() < number)
                .hasSameSizeAs(alone);
    }

    @Test
    void anEducatorMayWantAPlainLetterInstead() {
        var letters = TechniqueLetters.usual().with(Technique.MUTE, new Letter.Text("M", true));
        var line = LineText.read("bar 1\n1-4  E0 mute, E3 mute\n").line();
        var options = TestWords.options(Paper.A4).with(letters).withLegend(false);
        assertThat(texts(of(
                        Kind.TECHNIQUE,
                        Layout.of(Writing.of(line), options).get(0).marks())))
                .containsExactly("M", "M");
    }

    @Test // common practice, no source: two eighths are a quarter and an eighth of a triplet
    void swingHasItsSignWhereItIsTwoToOne() {
        var glyphs = SwingSign.shapes(new Swing(Swing.EIGHTHS, 2, 1)).stream()
                .filter(shape -> shape instanceof Shape.Sign)
                .map(shape -> ((Shape.Sign) shape).glyph())
                .toList();
        assertThat(glyphs)
                .containsExactly(
                        Glyph.MET_QUARTER, Glyph.MET_QUARTER, Glyph.MET_QUARTER, Glyph.MET_8, Glyph.tupletFigure(3));
        assertThat(SwingSign.shapes(new Swing(Swing.SIXTEENTHS, 3, 2))).isEmpty();
    }

    @Test // rule: rake-one-way
    void aRakeThatBeginsAnewHasAWordOfItsOwn() {
        var bar = "1  Ex rake, Ax rake, D5 rake\n2  Ex rake, Ax rake, D5 rake\n3-4  rest\n";
        assertThat(texts(of(Kind.TECHNIQUE, marks(bar, Staves.BOTH)))).containsExactly("rake", "rake");
        var one = "1  Ex rake, Ax rake, Dx rake, G5 rake\n2-4  rest\n";
        assertThat(texts(of(Kind.TECHNIQUE, marks(one, Staves.BOTH)))).containsExactly("rake");
    }

    @Test // rule: vibrato-wave; held from the fourth eighth over the middle of the bar
    void aVibratoLastsOverTies() {
        var marks = marks("1  E3, E3\n2  E3, E5 vibrato\n3  hold, E3\n4  rest\n", Staves.NOTATION_ONLY);
        var wave = of(Kind.VIBRATO, marks).stream()
                .map(Mark::box)
                .reduce(Box::union)
                .orElseThrow();
        var heads = of(Kind.HEAD, marks);
        assertThat(of(Kind.TIE, marks)).hasSize(1);
        assertThat(wave.right())
                .isBetween(heads.get(4).box().right(), heads.get(5).box().left());
    }

    @Test // rule: vibrato-wave; the wave of a held low note is no matter of the upper voice
    void theLowerVoicesVibratoDoesNotStandOverTheUpperOne() {
        var marks = marks("1  E3 until end vibrato + D5, D4\n2-4  D5, D7, D5\n", Staves.BOTH);
        double highest = of(Kind.HEAD, marks).stream()
                .mapToDouble(mark -> mark.box().bottom())
                .max()
                .orElseThrow();
        assertThat(of(Kind.VIBRATO, marks))
                .isNotEmpty()
                .allMatch(mark -> mark.box().top() > highest);
    }

    @Test // rule: bend-arrow
    void bendsOfOneMomentStandSideBySide() {
        var bends = of(Kind.BEND, marks("1-4  A4 bend 1/4 + D3 bend 1/4\n", Staves.BOTH));
        var amounts =
                bends.stream().filter(mark -> mark.shape() instanceof Shape.Run).toList();
        var lines = bends.stream()
                .filter(mark -> !(mark.shape() instanceof Shape.Run))
                .toList();
        assertThat(texts(amounts)).containsExactly("¼", "¼");
        for (var amount : amounts) {
            assertThat(lines).noneMatch(line -> line.box().overlaps(amount.box()));
        }
    }

    @Test // rule: bend-in-staff; G bent by half a tone is A flat, by a whole one A
    void theStaffShowsWhatABendSounds() {
        var half = marks("1-4  D5 bend 1/2\n", Staves.BOTH);
        assertThat(glyphs(of(Kind.ACCIDENTAL, half))).containsExactly(Glyph.FLAT);
        assertThat(glyphs(of(Kind.BEND, half)))
                .containsExactly(Glyph.PARENTHESIS_LEFT, Glyph.HEAD_BLACK, Glyph.PARENTHESIS_RIGHT);
        var whole = of(Kind.BEND, marks("1-4  D5 bend 1\n", Staves.BOTH));
        assertThat(glyphs(whole)).containsExactly(Glyph.PARENTHESIS_LEFT, Glyph.HEAD_BLACK, Glyph.PARENTHESIS_RIGHT);
        assertThat(texts(whole)).containsExactly("1");
        assertThat(glyphs(of(Kind.BEND, marks("1-4  D5 bend 1/4\n", Staves.BOTH))))
                .isEmpty();
    }

    @Test // rule: bend-in-staff, curve-shape: to the head, and over the sign before it
    void theCurveOfABendKeepsClearOfTheSmallSign() {
        var marks = marks("1-2  G7 bend 1/2 release\n3-4  D5 bend 1/2\n", Staves.BOTH);
        var signs = of(Kind.ACCIDENTAL, marks);
        assertThat(signs).hasSizeGreaterThanOrEqualTo(2);
        var curves = of(Kind.BEND, marks).stream()
                .map(Mark::shape)
                .filter(shape -> shape instanceof Shape.Curve)
                .toList();
        assertThat(curves).hasSizeGreaterThanOrEqualTo(3);
        for (var sign : signs) {
            assertThat(curves)
                    .allSatisfy(curve -> assertThat(curve.pieces()).noneMatch(piece -> piece.overlaps(sign.box())));
        }
    }

    @Test // rule: bend-in-staff, bend-arrow: a pre-bend without a curve and with a straight arrow, a release back down
    void bendsBeforeTheStrokeAndReleasesAreDrawn() {
        var bend = of(Kind.BEND, marks("1-4  D5 bend 1\n", Staves.BOTH));
        var before = of(Kind.BEND, marks("1-4  D5 prebend 1\n", Staves.BOTH));
        var released = of(Kind.BEND, marks("1-4  D5 bend 1 release\n", Staves.BOTH));
        assertThat(curves(bend)).isEqualTo(2);
        assertThat(curves(before)).isZero();
        assertThat(glyphs(before)).isEqualTo(glyphs(bend));
        assertThat(curves(released)).isEqualTo(4);
        assertThat(glyphs(released)).hasSize(2 * glyphs(bend).size());
        var arrows = released.stream()
                .filter(mark -> mark.shape() instanceof Shape.Polygon)
                .map(Mark::box)
                .toList();
        assertThat(arrows).hasSize(2);
        assertThat(arrows.get(1).top()).isGreaterThan(arrows.get(0).top());
    }

    /** The key has no sign: D5 is G, which half a tone makes A flat, at the next position above. */
    @Test // rule: bend-in-staff: the large head where it sounds, behind the small one of its fret
    void whatIsBentBeforeTheStrokeHasItsLargeHeadWhereItSounds() {
        for (var staves : List.of(Staves.BOTH, Staves.NOTATION_ONLY)) {
            var marks = marks("1-2  D5\n3-4  D5 prebend 1/2\n", staves);
            var heads = of(Kind.HEAD, marks);
            assertThat(heads).hasSize(2);
            double half = heads.get(0).box().top() - heads.get(1).box().top();
            assertThat(half).as("one position higher").isCloseTo(0.5, within(1e-9));
            var small = of(Kind.BEND, marks).stream()
                    .filter(mark -> mark.shape() instanceof Shape.Sign sign && sign.glyph() == Glyph.HEAD_BLACK)
                    .map(Mark::box)
                    .toList();
            assertThat(small).hasSize(1);
            assertThat(middle(small.get(0))).isCloseTo(middle(heads.get(0).box()), within(1e-9));
            var flat = of(Kind.ACCIDENTAL, marks).get(0).box();
            assertThat(small.get(0).right()).isLessThan(flat.left());
            assertThat(flat.right()).isLessThan(heads.get(1).box().left());
        }
    }

    private static double middle(Box box) {
        return (box.top() + box.bottom()) / 2;
    }

    @Test // rule: bend-in-staff: of a release the small head of the fret again, behind the large one
    void whatIsLetBackLeadsToTheHeadOfItsFret() {
        var marks = marks("1-4  D5 prebend 1 release\n", Staves.BOTH);
        var large = of(Kind.HEAD, marks).get(0).box();
        var small = of(Kind.BEND, marks).stream()
                .filter(mark -> mark.shape() instanceof Shape.Sign sign && sign.glyph() == Glyph.HEAD_BLACK)
                .map(Mark::box)
                .toList();
        assertThat(small).hasSize(2);
        assertThat(small.get(0).right()).isLessThan(large.left());
        assertThat(small.get(1).left()).isGreaterThan(large.right());
        assertThat(middle(small.get(1))).isEqualTo(middle(small.get(0))).isGreaterThan(middle(large));
    }

    @Test // rule: curve-from-bend: the finger leaves the fret that the string was let back to
    void aPullAfterAReleaseBeginsWhereTheStringCameToRest() {
        var marks = marks("1-2  G14 bend 1 release\n3-4  G12 pull\n", Staves.BOTH);
        var smalls = of(Kind.BEND, marks).stream()
                .filter(mark -> mark.shape() instanceof Shape.Sign sign && sign.glyph() == Glyph.HEAD_BLACK)
                .map(Mark::box)
                .toList();
        assertThat(smalls).hasSize(2);
        var slurs = of(Kind.SLUR, marks);
        assertThat(slurs).hasSize(2);
        var slur = (Shape.Curve) slurs.get(0).shape();
        assertThat(slur.from().x()).isCloseTo(smalls.get(1).middle(), within(0.3));
        assertThat(Math.abs(slur.from().y() - middle(smalls.get(1)))).isLessThan(1);
        var down = of(Kind.BEND, marks).stream()
                .filter(mark -> mark.shape() instanceof Shape.Polygon)
                .map(Mark::box)
                .toList();
        assertThat(down).hasSize(2);
        assertThat(slurs.get(1).box().left()).isGreaterThan(down.get(1).middle() - 0.1);
    }

    @Test // rule: curve-from-bend
    void aPullFromABentStringBeginsAtTheBentPitch() {
        var marks = marks("1-2  G14 bend 1\n3-4  G12 pull\n", Staves.BOTH);
        var small = of(Kind.BEND, marks).stream()
                .filter(mark -> mark.shape() instanceof Shape.Sign sign && sign.glyph() == Glyph.HEAD_BLACK)
                .map(Mark::box)
                .toList();
        assertThat(small).hasSize(1);
        var slur = (Shape.Curve) of(Kind.SLUR, marks).get(0).shape();
        assertThat(slur.from().x()).isCloseTo(small.get(0).middle(), within(0.3));
    }

    @Test // rule: bend-in-staff: A flat by a bend, then A natural and A flat by the frets
    void aLaterNoteSaysItsSignAnew() {
        var natural = marks("1-2  D5 prebend 1/2\n3-4  D7\n", Staves.BOTH);
        assertThat(glyphs(of(Kind.ACCIDENTAL, natural))).containsExactly(Glyph.FLAT, Glyph.NATURAL);
        var flat = marks("1-2  D5 bend 1/2\n3-4  D6 as Ab\n", Staves.BOTH);
        assertThat(glyphs(of(Kind.ACCIDENTAL, flat))).containsExactly(Glyph.FLAT, Glyph.FLAT);
        var none = marks("1-2  D5 bend 1\n3-4  D7\n", Staves.BOTH);
        assertThat(of(Kind.ACCIDENTAL, none)).isEmpty();
    }

    private static long curves(List<Mark> marks) {
        return marks.stream()
                .filter(mark -> mark.shape() instanceof Shape.Curve)
                .count();
    }

    private static List<Glyph> glyphs(List<Mark> marks) {
        return marks.stream()
                .filter(mark -> mark.shape() instanceof Shape.Sign)
                .map(mark -> ((Shape.Sign) mark.shape()).glyph())
                .toList();
    }
}
