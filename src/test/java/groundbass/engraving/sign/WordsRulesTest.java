package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Names, words and signs around the notes. */
class WordsRulesTest {
    @Test // rule: chord-names: their signs stand on the line and are as high as a capital
    void aSignIsAsHighAsItsLetter() {
        for (var name : List.of("Bb", "C#", "Ab/Eb", "F#/C#")) {
            var drawn = Drawn.of("bar 1 over " + name + "\n1-4  E0\n");
            var word = (Shape.Word) drawn.of(Kind.CHORD_NAME).get(0).shape();
            var letter = word.parts().get(0).box();
            var signs = word.parts().stream()
                    .filter(part -> part instanceof Shape.Sign)
                    .map(Shape::box)
                    .toList();
            assertThat(signs).isNotEmpty();
            for (var sign : signs) {
                assertThat(sign.bottom()).as(name).isCloseTo(letter.bottom(), within(0.15));
                assertThat(sign.top()).as(name).isCloseTo(letter.top(), within(0.15));
            }
        }
    }

    @Test // rule: chord-names: real accidentals, raised extensions, a slash before the bass; names keep apart
    void chordNamesAreSetWithTheirSigns() {
        var drawn = Drawn.of("bar 1 over Bbmaj7/D, F#m7b5 at 2\n1-4  A1, E2, E0, E1\n");
        var names = drawn.of(Kind.CHORD_NAME);
        assertThat(names).hasSize(2);
        var first = (Shape.Word) names.get(0).shape();
        assertThat(first.text()).isEqualTo("B♭maj7/D");
        assertThat(first.parts().stream().filter(Shape.Sign.class::isInstance).map(shape -> ((Shape.Sign) shape)
                        .glyph()))
                .containsExactly(Glyph.FLAT);
        assertThat(run(first, "maj7").at().y()).isLessThan(run(first, "B").at().y());
        assertThat(run(first, "/").at().y()).isEqualTo(run(first, "B").at().y());
        assertThat(names.get(1).box().left()).isGreaterThan(names.get(0).box().right());
    }

    private static Shape.Run run(Shape.Word word, String text) {
        return word.parts().stream()
                .filter(Shape.Run.class::isInstance)
                .map(Shape.Run.class::cast)
                .filter(run -> run.text().equals(text))
                .findFirst()
                .orElseThrow();
    }

    @Test // rule: section-and-tempo: the tempo, then the feel, and the section in the row above
    void aSectionStandsOverTempoAndFeel() {
        var drawn = Drawn.of("tempo 92\nfeel swing 8ths 3:2\nsection Lantern\nbar 1\n1-4  A0, A3, A5, A7\n");
        assertThat(drawn.texts(Kind.SECTION)).containsExactly("Lantern");
        assertThat(((Shape.Word) drawn.of(Kind.TEMPO).get(0).shape()).text()).contains("92");
        assertThat(drawn.box(Kind.SECTION, 0).bottom())
                .isLessThan(drawn.box(Kind.TEMPO, 0).top());
        assertThat(drawn.box(Kind.FEEL, 0).left())
                .isGreaterThan(drawn.box(Kind.TEMPO, 0).right());
    }

    @Test // rule: words-over-staff: in italics, clear of the notes
    void wordsStandAboveWhatTheySpeakOf() {
        var drawn = Drawn.of("bar 1\n1-4  A0, G12 \"stop here\", A5, rest\n");
        var words = (Shape.Run) drawn.of(Kind.WORDS).get(0).shape();
        assertThat(words.text()).isEqualTo("stop here");
        assertThat(words.face()).isEqualTo(Face.ITALIC);
        assertThat(drawn.box(Kind.WORDS, 0).bottom())
                .isLessThan(drawn.box(Kind.HEAD, 1).top());
        assertThat(drawn.box(Kind.WORDS, 0).left())
                .isBetween(
                        drawn.box(Kind.HEAD, 0).right(), drawn.box(Kind.HEAD, 1).right());
    }

    @Test // rule: articulation-side: on the head's side; a hold over the staff, a dynamic under it
    void signsKeepToTheirSide() {
        var text = "bar 1\n1  E0 short\n2  G0 short\n3  A3 fermata\n4  A0 f\n";
        var drawn = Drawn.of(text, Staves.NOTATION_ONLY);
        // E1 has its stem up and so its dot below, G2 the other way round
        var glyphs = drawn.glyphs(Kind.ARTICULATION);
        var low = drawn.box(Kind.ARTICULATION, glyphs.indexOf(Glyph.STACCATO_ABOVE));
        var high = drawn.box(Kind.ARTICULATION, glyphs.lastIndexOf(Glyph.STACCATO_ABOVE));
        assertThat(glyphs).containsOnlyOnce(Glyph.FERMATA);
        assertThat(low.top()).isGreaterThan(drawn.box(Kind.HEAD, 0).bottom());
        assertThat(high.bottom()).isLessThan(drawn.box(Kind.HEAD, 1).top());
        assertThat(drawn.box(Kind.ARTICULATION, glyphs.indexOf(Glyph.FERMATA)).bottom())
                .isLessThan(drawn.top());
        assertThat(drawn.box(Kind.DYNAMIC, 0).top()).isGreaterThan(drawn.top() + 4);
    }

    @Test // rule: bend-arrow
    void aBendSaysHowFar() {
        var drawn = Drawn.of("bar 1\n1-4  G5 bend 1/2, G5 bend 1, rest*2\n");
        assertThat(drawn.texts(Kind.BEND)).containsExactly("½", "1");
        var points = drawn.of(Kind.BEND).stream()
                .filter(mark -> mark.shape() instanceof Shape.Polygon)
                .map(Mark::box)
                .toList();
        assertThat(points).hasSize(2).allSatisfy(point -> assertThat(point.bottom())
                .isLessThan(drawn.box(Kind.FRET, 0).top()));
    }

    @Test // rule: fretting-fingers: a small number by the number of its fret
    void aFingerStandsUnderItsFret() {
        var drawn = Drawn.of("bar 1\n1-4  A3 with 1, A5 with 3, rest*2\n");
        assertThat(drawn.texts(Kind.FINGER)).containsExactly("1", "3");
        for (int i = 0; i < 2; i++) {
            assertThat(drawn.box(Kind.FINGER, i).top())
                    .isGreaterThan(drawn.box(Kind.FRET, i).bottom());
            assertThat(Math.abs(drawn.box(Kind.FINGER, i).middle()
                            - drawn.box(Kind.FRET, i).middle()))
                    .isLessThan(0.2);
            assertThat(drawn.box(Kind.FINGER, i).height())
                    .isLessThan(drawn.box(Kind.FRET, i).height());
        }
    }
}
