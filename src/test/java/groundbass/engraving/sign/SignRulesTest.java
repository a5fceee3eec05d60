package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ledger lines, rests, dots, accidentals and tuplets as they are drawn. */
class SignRulesTest {
    @Test // rule: ledger-line-reach: 0.4 beyond each side of the head, 0.16 thick
    void ledgerLinesReachBeyondTheHead() {
        var drawn = Drawn.of("bar 1\n1  E0\n2-4  rest\n");
        var ledger = drawn.box(Kind.LEDGER, 0);
        var head = drawn.box(Kind.HEAD, 0);
        assertThat(head.left() - ledger.left()).isCloseTo(0.4, within(0.01));
        assertThat(ledger.right() - head.right()).isCloseTo(0.4, within(0.01));
        assertThat(ledger.height()).isCloseTo(0.16, within(1e-9));
    }

    /**
     * rule: rest-height: whole rest hangs from line 4 (pos 6), half rest on the middle line (pos 4), quarter centred.
     */
    @Test
    void restsHangSitAndStandWhereTheyShould() {
        var whole = Drawn.of("bar 1\n1-4  rest\n");
        assertThat(whole.position(whole.at(Kind.REST, 0).y())).isCloseTo(6, within(1e-6));
        var half = Drawn.of("bar 1\n1-2  rest\n3  E0\n4  rest\n");
        assertThat(half.glyphs(Kind.REST)).containsExactly(Glyph.REST_HALF, Glyph.REST_QUARTER);
        assertThat(half.position(half.at(Kind.REST, 0).y())).isCloseTo(4, within(1e-6));
        assertThat(half.position(half.at(Kind.REST, 1).y())).isCloseTo(4, within(1e-6));
    }

    @Test // rule: rest-of-both-voices: an eighth of silence in both, written once, at the height of one voice's
    void aRestOfBothVoicesStandsOnce() {
        var drawn = Drawn.of("bar 1\n1-2  E0 until 3& + G5, G7\n3  G4\n3&  rest\n4  D3\n", Staves.NOTATION_ONLY);
        assertThat(drawn.glyphs(Kind.REST)).containsExactly(Glyph.REST_8);
        assertThat(drawn.position(drawn.at(Kind.REST, 0).y())).isCloseTo(4, within(1e-6));
        var apart = Drawn.of("bar 1\n1-2  E0 until 3& + G5, G7\n3  rest\n3&  rest\n4  D3\n", Staves.NOTATION_ONLY);
        assertThat(apart.glyphs(Kind.REST)).as("of unlike length").hasSizeGreaterThan(1);
    }

    /** Over the tablature alone: six notes have a stem, the silence of both voices one rest and none. */
    @Test // rule: rest-of-both-voices
    void aRestOfBothVoicesHasNoStemOverTheTablature() {
        var drawn = Drawn.of("bar 1\n1-2  E0 until 3& + G5, G7\n3  G4\n3&  rest\n4  D3\n", Staves.TAB_ONLY);
        assertThat(drawn.glyphs(Kind.REST)).containsExactly(Glyph.REST_8);
        int stems = drawn.of(Kind.STEM).size();
        var sounding = Drawn.of("bar 1\n1-2  E0 until 3& + G5, G7\n3  G4\n3&  G4\n4  D3\n", Staves.TAB_ONLY);
        assertThat(stems).isLessThan(sounding.of(Kind.STEM).size());
    }

    @Test // rule: rests-of-a-beat: where a beam raises one, the other goes with it
    void theRestsOfABeatStandAtOneHeight() {
        var drawn = Drawn.of("bar 1\n1  rest for 2, rest, D2, rest for 2, rest, D2\n2-4  rest\n", Staves.NOTATION_ONLY);
        var heights =
                IntStream.range(0, 4).mapToObj(i -> drawn.at(Kind.REST, i).y()).toList();
        assertThat(heights.get(3))
                .as("raised over the hooks")
                .isLessThan(drawn.at(Kind.REST, 4).y());
        assertThat(heights).containsOnly(heights.get(3));
    }

    @Test // rule: whole-bar-rest: centred in its bar
    void aWholeBarsRestStandsInItsMiddle() {
        var drawn = Drawn.of("bar 1\n1-4  E0\nbar 2\n1-4  rest\nbar 3\n1-4  E0\n");
        double left = drawn.box(Kind.BARLINE, 1).right();
        double right = drawn.box(Kind.BARLINE, 2).left();
        assertThat(drawn.box(Kind.REST, 0).middle()).isCloseTo((left + right) / 2, within(0.3));
    }

    @Test // rule: dot-in-space: right of the head by 0.4 to 0.6, in a space: E1 at -2 is on a line, F1 at -1 in a space
    void dotsStandInSpaces() {
        for (var place : new String[] {"E0", "E1", "A0", "D0"}) {
            var drawn = Drawn.of("bar 1\n1-3  " + place + "\n4  rest\n");
            double gap = drawn.box(Kind.DOT, 0).left() - drawn.box(Kind.HEAD, 0).right();
            assertThat(gap).as(place).isBetween(0.4, 0.6);
            double position = drawn.position(drawn.at(Kind.DOT, 0).y());
            assertThat(Math.abs(Math.round(position)) % 2).as(place).isEqualTo(1);
            assertThat(position)
                    .isBetween(
                            drawn.position(drawn.at(Kind.HEAD, 0).y()) - 1e-6,
                            drawn.position(drawn.at(Kind.HEAD, 0).y()) + 1.01);
        }
    }

    @Test // rule: dots-of-chord, dot-size: one for each head of a chord, in spaces of their own; 0.4 across
    void eachHeadOfAChordHasItsDot() {
        var drawn = Drawn.of("bar 1\n1-3  A3+D0+G0\n4  rest\n", Staves.NOTATION_ONLY);
        var heights = drawn.of(Kind.DOT).stream().map(dot -> dot.box().top()).collect(Collectors.toSet());
        assertThat(heights).hasSize(3);
        assertThat(drawn.box(Kind.DOT, 0).width()).isCloseTo(0.4, within(0.01));
    }

    @Test // rule: accidental-gap: about 0.2 from the head
    void aSignStandsCloseToItsHead() {
        var drawn = Drawn.of("bar 1\n1-4  E2\n");
        double gap =
                drawn.box(Kind.HEAD, 0).left() - drawn.box(Kind.ACCIDENTAL, 0).right();
        assertThat(gap).isCloseTo(0.2, within(0.05));
    }

    /**
     * rule: accidental-columns: less than a sixth apart in different columns, the top note's nearest; from a sixth on
     * in one.
     */
    @Test
    void signsOfAChordStandInColumnsWhereTheyMustAndInOneWhereTheyCan() {
        var third = Drawn.of("bar 1\n1-4  A4 as C# + D4 as F#\n", Staves.NOTATION_ONLY);
        var signs = third.of(Kind.ACCIDENTAL);
        assertThat(signs).hasSize(2);
        var upper = signs.get(0).box().top() < signs.get(1).box().top() ? signs.get(0) : signs.get(1);
        var lower = upper == signs.get(0) ? signs.get(1) : signs.get(0);
        assertThat(lower.box().right()).isLessThan(upper.box().left());
        var octave = Drawn.of("bar 1\n1-4  E2 as F# + D4 as F#\n", Staves.NOTATION_ONLY);
        assertThat(octave.box(Kind.ACCIDENTAL, 0).left())
                .isCloseTo(octave.box(Kind.ACCIDENTAL, 1).left(), within(0.01));
    }

    /**
     * rule: tuplet-without-bracket: no bracket where the beam covers exactly the tuplet; the number centred on the
     * beam.
     */
    @Test
    void aBeamedTripletNeedsNoBracket() {
        var drawn = Drawn.of("bar 1\n1  E0, E1, E3\n2-4  rest\n");
        assertThat(drawn.of(Kind.TUPLET)).hasSize(1);
        assertThat(drawn.box(Kind.TUPLET, 0).middle())
                .isCloseTo(drawn.box(Kind.BEAM, 0).middle(), within(0.2));
    }

    /** rule: tuplet-ratio-shown: SMuFL, range "Tuplets": three in the time of five, a triplet and a quadruplet of three. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            7/8  | 1-7 A5, A5, A5              | 3:7
            5/4  | 1-5 A5, A5, A5              | 3:5
            4/4  | 1-2 E0, E1, E3; 3-4 rest    | 3
            4/4  | 1 E0, E1, E3, E1, E3; 2-4 rest | 5
            12/8 | 1-3 E0, E1, E3, E1; 4-12 rest  | 4
            """)
    void aTupletOfAnUnusualRatioSaysBothNumbers(String metre, String counts, String figures) {
        var drawn = Drawn.of("meter " + metre + "\n\nbar 1\n" + counts.replace("; ", "\n") + "\n");
        var printed = drawn.of(Kind.TUPLET).stream()
                .map(Mark::shape)
                .filter(Shape.Sign.class::isInstance)
                .map(shape -> ((Shape.Sign) shape).glyph())
                .map(glyph -> glyph == Glyph.TUPLET_COLON
                        ? ":"
                        : String.valueOf(glyph.codePoint() - Glyph.TUPLET_0.codePoint()))
                .collect(Collectors.joining());
        assertThat(printed).isEqualTo(figures);
    }

    @Test // rule: tuplet-bracket: hooks of about 0.75 toward the notes, lines of 0.16
    void otherTupletsHaveABracketWithHooks() {
        var drawn = Drawn.of("bar 1\n1-2  E0, E1, E3\n3-4  rest\n");
        var strokes = drawn.of(Kind.TUPLET).stream()
                .filter(mark -> mark.shape() instanceof Shape.Stroke)
                .map(mark -> (Shape.Stroke) mark.shape())
                .toList();
        assertThat(strokes).hasSize(4).allSatisfy(stroke -> assertThat(stroke.thickness())
                .isEqualTo(0.16));
        var hooks = strokes.stream()
                .filter(stroke -> stroke.from().x() == stroke.to().x())
                .toList();
        assertThat(hooks).hasSize(2).allSatisfy(hook -> assertThat(
                        Math.abs(hook.to().y() - hook.from().y()))
                .isCloseTo(0.75, within(1e-9)));
        double notes = drawn.box(Kind.STEM, 0).top();
        assertThat(hooks.get(0).to().y()).isGreaterThan(hooks.get(0).from().y()).isLessThan(notes);
    }

    /** rule: hairpin-lines: between the dynamics, 0.16 thick, closed where it begins and open where it leads to. */
    @Test
    void aHairpinLiesBetweenItsDynamics() {
        var drawn = Drawn.of("bar\n1  A0 p cresc, A3\n2-3  A5\n4  A7 f\n");
        var lines = strokes(drawn);
        assertThat(lines).hasSize(2).allSatisfy(line -> assertThat(line.thickness())
                .isEqualTo(0.16));
        assertThat(lines.get(0).from()).isEqualTo(lines.get(1).from());
        assertThat(Math.abs(lines.get(0).to().y() - lines.get(1).to().y())).isBetween(0.8, 1.4);
        assertThat(drawn.box(Kind.HAIRPIN, 0).left())
                .isGreaterThan(drawn.box(Kind.DYNAMIC, 0).right());
        assertThat(drawn.box(Kind.HAIRPIN, 0).right())
                .isLessThan(drawn.box(Kind.DYNAMIC, 1).left());
        // in their row: within the height of the letters
        assertThat(lines.get(0).from().y())
                .isBetween(
                        drawn.box(Kind.DYNAMIC, 0).top(),
                        drawn.box(Kind.DYNAMIC, 0).bottom());
    }

    /** rule: hairpin-lines: nothing is left of it for the new system, and it is fully open where the old one ends. */
    @Test
    void aHairpinThatLeadsToANewSystemEndsBeforeIt() {
        var drawn = Drawn.of("bar 1\n1-2  E0 p cresc\n3-4  E0\nnew system\nbar 2\n1-4  E0 f\n");
        var lines = drawn.of(Kind.HAIRPIN);
        assertThat(lines).hasSize(2);
        assertThat(drawn.of(Kind.DYNAMIC)).hasSize(2);
        double open = ((Shape.Stroke) lines.get(1).shape()).to().y()
                - ((Shape.Stroke) lines.get(0).shape()).to().y();
        assertThat(open).isCloseTo(1.1, within(1e-9));
    }

    /** rule: hairpin-lines: a diminuendo over a break is open at both sides of the break. */
    @Test
    void aHairpinIsOpenAtASystemBreak() {
        var drawn = Drawn.of("bar\n1-4  A5 f dim\nnew system\nbar\n1-2  A5\n3-4  A3 p\n");
        var lines = strokes(drawn);
        assertThat(lines).hasSize(4);
        assertThat(open(lines.get(0).from(), lines.get(1).from())).isGreaterThan(0.8);
        assertThat(open(lines.get(0).to(), lines.get(1).to())).isGreaterThan(0.2);
        assertThat(open(lines.get(2).from(), lines.get(3).from())).isGreaterThan(0.2);
        assertThat(open(lines.get(2).to(), lines.get(3).to())).isZero();
    }

    private static double open(Point one, Point two) {
        return Math.abs(one.y() - two.y());
    }

    private static List<Shape.Stroke> strokes(Drawn drawn) {
        return drawn.of(Kind.HAIRPIN).stream()
                .map(mark -> (Shape.Stroke) mark.shape())
                .toList();
    }

    /** rule: articulation-side. SMuFL: articTenutoAbove U+E4A4, articMarcatoAbove U+E4AC. */
    @Test
    void tenutoStandsByItsHeadAndMarcatoOverTheStaff() {
        assertThat(Glyph.TENUTO_ABOVE.codePoint()).isEqualTo(0xE4A4);
        assertThat(Glyph.MARCATO_ABOVE.codePoint()).isEqualTo(0xE4AC);
        // G of the E string: its stem is up, so what belongs to the head stands under it, the dot nearer
        var held = Drawn.of("bar\n1-4  E3 short tenuto\n", Staves.NOTATION_ONLY);
        assertThat(held.glyphs(Kind.ARTICULATION)).hasSize(2).last().isEqualTo(Glyph.TENUTO_ABOVE);
        var dot = held.box(Kind.ARTICULATION, 0);
        assertThat(dot.top()).isGreaterThan(held.box(Kind.HEAD, 0).bottom() - 0.3);
        assertThat(held.box(Kind.ARTICULATION, 1).top()).isGreaterThan(dot.bottom());
        var strong = Drawn.of("bar\n1-4  E3 marcato\n");
        assertThat(strong.glyphs(Kind.ARTICULATION)).containsExactly(Glyph.MARCATO_ABOVE);
        assertThat(strong.box(Kind.ARTICULATION, 0).bottom()).isLessThan(strong.top());
    }
}
