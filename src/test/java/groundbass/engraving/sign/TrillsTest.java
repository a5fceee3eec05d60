package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Glyph;
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

/** rule: trill-sign. */
class TrillsTest {
    private static List<Mark> marks(String text) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        var options = TestWords.options(Paper.A4).with(Staves.BOTH).withLegend(false);
        return Layout.of(Writing.of(reading.line()), options).get(0).marks();
    }

    private static List<Mark> of(Kind kind, List<Mark> marks) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }

    private static List<Glyph> glyphs(List<Mark> marks) {
        return of(Kind.TRILL, marks).stream()
                .map(mark -> ((Shape.Sign) mark.shape()).glyph())
                .toList();
    }

    @Test // rule: trill-sign: the letters, then a wave as long as the note and its ties
    void aTrillHasLettersAndAWaveOverTheStaff() {
        var marks = marks("bar 1\n1-2  D5 trill\n3-4  A3\n");
        var trill = of(Kind.TRILL, marks);
        assertThat(glyphs(marks)).startsWith(Glyph.TRILL, Glyph.TRILL_WAVE).doesNotContain(Glyph.SHARP, Glyph.FLAT);
        var heads = of(Kind.HEAD, marks);
        assertThat(trill)
                .allMatch(mark -> mark.box().bottom() < heads.get(0).box().top());
        double right =
                trill.stream().mapToDouble(mark -> mark.box().right()).max().orElseThrow();
        assertThat(right)
                .isGreaterThan((heads.get(0).box().left() + heads.get(1).box().left()) / 2)
                .isLessThan(heads.get(1).box().left());
    }

    @Test
    void overATieTheWaveGoesOn() {
        var one = of(Kind.TRILL, marks("bar 1\n1-4  D5 trill\nbar 2\n1-4  rest\n"));
        var two = of(Kind.TRILL, marks("bar 1\n1-4  D5 trill\nbar 2\n1-4  hold\n"));
        assertThat(two).hasSizeGreaterThan(one.size());
        assertThat(glyphs(two).stream().filter(Glyph.TRILL::equals)).hasSize(1);
    }

    @Test // rule: trill-sign: an accidental where the key does not have the upper note
    void anAccidentalSaysAnUpperNoteThatTheKeyDoesNotHave() {
        // in C, D to E flat
        assertThat(glyphs(marks("key C major\nbar 1\n1-4  A5 trill to 6\n"))).contains(Glyph.FLAT);
        // in C, B to C sharp
        assertThat(glyphs(marks("key C major\nbar 1\n1-4  A2 trill to 4\n"))).contains(Glyph.SHARP);
        // in D, E to F natural
        assertThat(glyphs(marks("key D major\nbar 1\n1-4  A7 trill to 8\n"))).contains(Glyph.NATURAL);
    }

    /** In C, E flat to F and B flat to C: a trill goes to the next letter of the key (Gould 2011, chapter 6, from memory). */
    @Test
    void aTrillOfANoteOutsideTheKeyGoesToTheNextLetterOfTheKey() {
        for (String place : List.of("A6", "G3")) {
            var marks = marks("key C major\nbar 1\n1-4  " + place + " trill\n");
            assertThat(glyphs(marks))
                    .as(place)
                    .contains(Glyph.TRILL)
                    .doesNotContain(Glyph.FLAT, Glyph.SHARP, Glyph.NATURAL);
            assertThat(of(Kind.FRET, marks))
                    .extracting(mark -> ((Shape.Run) mark.shape()).text())
                    .containsExactly(place.equals("A6") ? "6(8)" : "3(5)");
        }
    }

    @Test // rule: trill-sign: the upper note in brackets on its string
    void theTablatureSaysTheUpperFret() {
        var numbers = of(Kind.FRET, marks("key C major\nbar 1\n1-2  A5 trill\n3-4  A7 trill\n"));
        assertThat(numbers)
                .extracting(mark -> ((Shape.Run) mark.shape()).text())
                .containsExactly("5(7)", "7(8)");
    }
}
