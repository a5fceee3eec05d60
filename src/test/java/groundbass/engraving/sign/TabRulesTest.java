package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Tablature as it is drawn. */
class TabRulesTest {
    private static Drawn tab(String text) {
        return Drawn.of(text, Staves.TAB_ONLY);
    }

    @Test // rule: tab-lines: one line for each string, the lowest at the bottom
    void everyStringHasItsLine() {
        var drawn = tab("strings B0 E A D G\nbar 1\n1-4  B0, G0, rest*2\n");
        var heights =
                drawn.of(Kind.STAFF_LINE).stream().map(line -> line.box().top()).distinct();
        assertThat(heights).hasSize(5);
        assertThat(drawn.of(Kind.STAFF_LINE))
                .allSatisfy(line -> assertThat(line.box().height()).isCloseTo(0.1, within(1e-9))); // ours
        assertThat(drawn.box(Kind.FRET, 0).top())
                .isGreaterThan(drawn.box(Kind.FRET, 1).bottom());
    }

    @Test // rule: tab-line-gap: the line is drawn in two pieces, the number between them
    void noLineRunsThroughANumber() {
        var drawn = tab("bar 1\n1-4  E12, A3, D5, G0\n");
        assertThat(drawn.of(Kind.FRET)).hasSize(4);
        for (var number : drawn.of(Kind.FRET)) {
            assertThat(drawn.of(Kind.STAFF_LINE)).isNotEmpty().noneMatch(line -> line.box()
                    .overlaps(number.box()));
        }
    }

    @Test // rule: tab-figures: cap height 1.2 to 1.4; two figures no wider than a head and 0.4
    void numbersHaveTheirSize() {
        var drawn = tab("bar 1\n1-4  E7, E12, rest*2\n");
        assertThat(drawn.box(Kind.FRET, 0).height()).isBetween(1.2, 1.4);
        assertThat(drawn.box(Kind.FRET, 1).width()).isLessThanOrEqualTo(1.18 + 0.4);
        assertThat(drawn.box(Kind.FRET, 1).height()).isGreaterThanOrEqualTo(1.0);
    }

    @Test // rule: tab-clef: the font has clefs for four and six lines
    void fourLinesHaveTheFourLineClef() {
        assertThat(tab("bar 1\n1-4  E0\n").glyphs(Kind.CLEF)).containsExactly(Glyph.TAB_CLEF_FOUR);
        assertThat(tab("strings B0 E A D G C\nbar 1\n1-4  E0\n").glyphs(Kind.CLEF))
                .containsExactly(Glyph.TAB_CLEF_SIX);
    }

    @Test // rule: tab-rhythm: alone it has stems and beams below; half notes have a shorter stem
    void aloneItShowsItsRhythmBelow() {
        var drawn = tab("bar 1\n1  E0, E3\n2  E0\n3-4  E0\n");
        double lowest = drawn.of(Kind.STAFF_LINE).stream()
                .mapToDouble(line -> line.box().bottom())
                .max()
                .orElseThrow();
        assertThat(drawn.of(Kind.STEM)).hasSize(4).allMatch(stem -> stem.box().top() > lowest);
        assertThat(drawn.of(Kind.BEAM)).hasSize(1);
        assertThat(drawn.box(Kind.STEM, 3).height())
                .isLessThan(drawn.box(Kind.STEM, 2).height());
    }

    @Test // rule: tab-rhythm, tab-no-signatures: under a notation staff neither rhythm nor key nor time
    void underNotationItHasNeitherRhythmNorKeyNorTime() {
        var drawn = Drawn.of("key D major\nbar 1\n1  E0, E2\n2  E3\n3  rest\n4  E5\n");
        double bottom = drawn.top() + 6;
        for (var kind : new Kind[] {Kind.KEY, Kind.TIME, Kind.STEM, Kind.BEAM, Kind.REST}) {
            assertThat(drawn.of(kind))
                    .as(kind.name())
                    .isNotEmpty()
                    .allMatch(mark -> mark.box().top() < bottom);
        }
    }

    /**
     * rule: tab-dead-note, tab-ghost-note, tab-harmonic, tab-tied-note: X, parentheses, angle brackets; a tied note
     * shows nothing.
     */
    @Test
    void numbersSayWhatTheNoteIs() {
        var drawn = Drawn.of("bar 1\n1-4  Ex, E5 ghost, E12 harmonic, E3\nbar 2\n1-4  hold, rest*3\n");
        assertThat(drawn.texts(Kind.FRET)).containsExactly("X", "(5)", "<12>", "3");
        assertThat(drawn.glyphs(Kind.HEAD))
                .containsExactly(
                        Glyph.X_BLACK, Glyph.HEAD_BLACK, Glyph.DIAMOND_BLACK, Glyph.HEAD_BLACK, Glyph.HEAD_BLACK);
        assertThat(drawn.of(Kind.PARENTHESIS)).hasSize(2);
    }

    @Test // rule: technique-row: letters in one row on one baseline, between the staves, centred on their notes
    void lettersStandInOneRow() {
        var drawn = Drawn.of("bar 1\n1-4  E0 slap, G5 pop, A3 slap, D7 pop\n");
        assertThat(drawn.texts(Kind.TECHNIQUE)).containsExactly("T", "P", "T", "P");
        for (int i = 0; i < 4; i++) {
            assertThat(drawn.box(Kind.TECHNIQUE, i).bottom())
                    .isCloseTo(drawn.box(Kind.TECHNIQUE, 0).bottom(), within(0.05));
            assertThat(drawn.box(Kind.TECHNIQUE, i).middle())
                    .isCloseTo(drawn.box(Kind.FRET, i).middle(), within(0.15));
        }
        assertThat(drawn.box(Kind.TECHNIQUE, 0).top()).isGreaterThan(drawn.top() + 4);
        assertThat(drawn.box(Kind.TECHNIQUE, 0).bottom())
                .isLessThan(drawn.box(Kind.FRET, 1).top());
    }

    @Test // rule: technique-row: plucking hand, slur and palm mute on one baseline, over low strings and high ones
    void lettersOfAllKindsShareABaseline() {
        var drawn = Drawn.of("bar 1\n1  G5 pop, G7 hammer\n2  E0 slap\n3  E0 mute, E3 mute\n4  A3 slap\n");
        var lines = Stream.of(Kind.TECHNIQUE, Kind.SLUR_LETTER)
                .flatMap(kind -> drawn.of(kind).stream())
                .map(Mark::shape)
                .flatMap(shape -> shape instanceof Shape.Run run ? Stream.of(run) : Stream.of())
                .toList();
        assertThat(lines).extracting(Shape.Run::text).contains("P", "H", "T", "P.M.");
        assertThat(lines)
                .extracting(run -> run.at().y())
                .containsOnly(lines.get(0).at().y());
        assertThat(lines).extracting(Shape.Run::size).containsOnly(lines.get(0).size());
    }

    @Test // rule: tab-slurs: slurs for a hammer lie over the numbers
    void slursLieOverTheNumbers() {
        var drawn = tab("bar 1\n1-4  E0, E2 hammer, rest*2\n");
        assertThat(drawn.box(Kind.SLUR, 0).bottom())
                .isLessThan(drawn.box(Kind.FRET, 0).top() + 0.2);
        assertThat(drawn.texts(Kind.SLUR_LETTER)).containsExactly("H");
    }

    @Test // rule: slide-lines: a straight line that leans the way of the pitch, 0.16 thick, 0.2 from the numbers
    void slidesLeanTheWayOfThePitch() {
        var drawn = tab("bar 1\n1-4  E3, E5 slide, E3 slide, rest\n");
        var up = (Shape.Stroke) drawn.of(Kind.SLIDE).get(0).shape();
        var down = (Shape.Stroke) drawn.of(Kind.SLIDE).get(1).shape();
        assertThat(up.to().y()).isLessThan(up.from().y());
        assertThat(down.to().y()).isGreaterThan(down.from().y());
        assertThat(up.thickness()).isEqualTo(0.16);
        assertThat(up.from().x() - drawn.box(Kind.FRET, 0).right()).isCloseTo(0.2, within(0.05));
    }

    @Test // rule: tab-chord-column: the numbers of a chord stand in one column
    void chordsStandInOneColumn() {
        var drawn = tab("bar 1\n1-4  D4+G5\n");
        assertThat(drawn.box(Kind.FRET, 0).middle())
                .isCloseTo(drawn.box(Kind.FRET, 1).middle(), within(0.01));
    }

    @Test // rule: joined-barlines: barlines run through both staves
    void barlinesJoinTheStaves() {
        var drawn = Drawn.of("bar 1\n1-4  E0\n");
        double lowest = drawn.of(Kind.STAFF_LINE).stream()
                .mapToDouble(line -> line.box().bottom())
                .max()
                .orElseThrow();
        assertThat(drawn.of(Kind.BARLINE)).isNotEmpty().allSatisfy(line -> {
            assertThat(line.box().top()).isLessThan(drawn.top() + 0.1);
            assertThat(line.box().bottom()).isGreaterThan(lowest - 0.1);
        });
    }

    @Test // rule: tab-rhythm, two-voice-stems: each voice with a rhythm of its own, the upper one's stems up
    void ofTwoVoicesEachShowsItsRhythm() {
        var drawn = tab("bar 1\n1  E0 until end + G0\n2-4  G2, G4, G5\n");
        double top = drawn.top();
        var above = drawn.of(Kind.STEM).stream().filter(stem -> stem.box().bottom() < top);
        assertThat(above).hasSize(4);
        var both = tab("bar 1\n1-2  E0 until 3 + G0*2, G2*2\n3-4  E3 until end + G4\n");
        assertThat(both.of(Kind.STEM).stream().filter(stem -> stem.box().top() > top))
                .isNotEmpty();
    }

    @Test // rule: tab-tied-note
    void aHeldNoteThatEntersASystemHasItsNumberInParentheses() {
        var held = Drawn.of("bar 1\n1-4  E5\nbar 2\n1-4  hold\nnew system\nbar 3\n1-2  hold\n3-4  E3\n");
        assertThat(held.texts(Kind.FRET)).containsExactly("5", "(5)", "3");
    }
}
