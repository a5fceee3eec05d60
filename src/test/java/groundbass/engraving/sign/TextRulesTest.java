package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where words and figures stand. */
class TextRulesTest {
    private static List<String> downward(Drawn drawn, Kind kind) {
        return drawn.of(kind).stream()
                .sorted(Comparator.comparingDouble(mark -> mark.box().top()))
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
    }

    @Test // rule: fretting-fingers
    void aChordsFingersStandInTheOrderOfItsStrings() {
        var drawn = Drawn.of("bar 1\n1-4 A3 with 1 + D5 with 3 + G4 with 2\n");
        assertThat(downward(drawn, Kind.FINGER)).containsExactly("2", "3", "1");
        var two = Drawn.of("bar 1\n1-4 D2 with 1 + G4 with 3\n");
        assertThat(downward(two, Kind.FINGER)).containsExactly("3", "1");
    }

    @Test // rule: section-and-tempo
    void aTempoIsTiedToItsBar() {
        var drawn =
                Drawn.of("section Long section name that goes on and on and on and on\ntempo 72\nbar 1\n1-4 E0, E1\n"
                        + "bar 2\n1-4 E0, E1\ntempo 90\nbar 3\n1-4 E0, E1\n");
        var tempos = drawn.of(Kind.TEMPO);
        assertThat(tempos).hasSize(2);
        assertThat(tempos.get(0).box().left())
                .isCloseTo(drawn.box(Kind.STAFF_LINE, 0).left(), within(0.5));
        assertThat(tempos.get(1).box().left())
                .isCloseTo(drawn.box(Kind.BARLINE, 2).right(), within(0.5));
        assertThat(drawn.box(Kind.SECTION, 0).bottom())
                .isLessThan(tempos.get(0).box().top());
    }

    @Test // rule: words-over-staff
    void wordsStandOverTheirNote() {
        var drawn = Drawn.of("bar 1 over Am7\n1 E5 \"first of them\"\n2 E7 \"second of them\"\n3 E8\n"
                + "4 E8 \"fourth and last word of the bar\"\n");
        var words = drawn.of(Kind.WORDS).stream()
                .sorted(Comparator.comparingDouble(mark -> mark.box().left()))
                .toList();
        assertThat(words.get(0).box().left()).isCloseTo(drawn.box(Kind.HEAD, 0).left(), within(0.6));
        assertThat(words.get(1).box().left()).isCloseTo(drawn.box(Kind.HEAD, 1).left(), within(0.6));
        assertThat(words.get(words.size() - 1).box().left())
                .isGreaterThan(drawn.box(Kind.HEAD, 2).right());
        assertThat(drawn.box(Kind.CHORD_NAME, 0).bottom())
                .isGreaterThan(words.get(0).box().bottom());
    }

    /** rule: section-and-tempo: a letter in a box of four lines that clears it, a name in words without. */
    @Test
    void aLetterToRehearseByStandsInABox() {
        var drawn = Drawn.of("section B2\nbar 1\n1-4 E0, E1\nsection Bridge\nbar 2\n1-4 E0, E1\n");
        assertThat(drawn.texts(Kind.SECTION)).containsExactly("B2", "Bridge");
        var lines = drawn.of(Kind.SECTION).stream()
                .filter(mark -> mark.shape() instanceof Shape.Stroke)
                .map(Mark::box)
                .toList();
        assertThat(lines).hasSize(4);
        var box = lines.stream().reduce(Box::union).orElseThrow();
        var letter = drawn.box(Kind.SECTION, 0);
        assertThat(box.left()).isLessThan(letter.left() - 0.2);
        assertThat(box.right()).isGreaterThan(letter.right() + 0.2);
        assertThat(box.top()).isLessThan(letter.top() - 0.2);
        assertThat(box.bottom()).isGreaterThan(letter.bottom() + 0.2);
    }

    /** rule: title-block. */
    @Test
    void titleAndCreditStandOnOneBaselineAtBothMargins() {
        var drawn = Drawn.of("bar 1\n1-4 E0, E1\n");
        var title = text(drawn, "Lantern Street");
        var credit = text(drawn, "Quay Studio");
        var staff = drawn.box(Kind.STAFF_LINE, 0);
        assertThat(title.box().left()).isCloseTo(staff.left(), within(0.4));
        assertThat(credit.box().right()).isCloseTo(Paper.A4.width() - Paper.A4.margin(), within(0.4));
        assertThat(credit.at().y()).isCloseTo(title.at().y(), within(1e-9));
        assertThat(text(drawn, "Quay Series, no. 3").at().y())
                .isLessThan(title.at().y());
        assertThat(text(drawn, "Free to copy").at().y())
                .isGreaterThan(Paper.A4.height().orElseThrow() * 0.8);
    }

    /** rule: title-block. */
    @Test
    void aTitleIsMadeSmallerToKeepItOnOneLineButNotMuch() {
        assertThat(titles("The long way home by the harbour wall")).hasSize(1);
        assertThat(titles("The long way home by the harbour wall and over the bridge and back before the last lantern"))
                .hasSizeGreaterThan(1);
    }

    /** rule: title-block: lines of like length, where the last would else be one word. */
    @Test
    void noWordOfATitleStandsByItself() {
        int broken = 0;
        String title = "The long way home by the harbour wall and over the bridge";
        for (var next : List.of(" and", " back", " before", " the", " last", " lantern", " goes", " out", " tonight")) {
            title += next;
            var lines = titles(title);
            if (lines.size() > 1) {
                broken++;
                double widest =
                        lines.stream().mapToDouble(Shape.Run::width).max().orElseThrow();
                assertThat(lines).as(title).allSatisfy(line -> assertThat(line.width())
                        .isGreaterThan(widest / 2));
            }
        }
        assertThat(broken).isGreaterThan(4);
    }

    /** rule: slowing-line: from the words to the end of the bar. */
    @Test
    void aTempoThatFallsHasALineAsFarAsItFalls() {
        var drawn = Drawn.of("slowing to 60\nbar 1\n1-4 E0, E1, E0, E1, E0, E1, E0, E1\nbar 2\n1-4 E0, E1, E0, E1\n");
        var dashes = drawn.of(Kind.TEMPO).stream()
                .filter(mark -> mark.shape() instanceof Shape.Stroke)
                .map(Mark::box)
                .toList();
        assertThat(drawn.texts(Kind.TEMPO)).contains("slowing to 60");
        assertThat(dashes).hasSizeGreaterThan(2).allMatch(dash -> dash.height() < 0.2);
        double end = drawn.box(Kind.BARLINE, 1).left();
        double last = dashes.stream().mapToDouble(Box::right).max().orElseThrow();
        assertThat(last).isLessThan(end).isGreaterThan(end - 4);
    }

    private static List<Shape.Run> titles(String title) {
        var options = SheetOptions.of(
                Paper.A4, new TestWords(), new SheetOptions.Header(title, "", "Quay Studio"), SheetOptions.Footer.NONE);
        return Drawn.of("bar 1\n1-4 E0, E1\n", options).of(Kind.TEXT).stream()
                .map(mark -> (Shape.Run) mark.shape())
                .filter(run -> run.face() == Face.BOLD)
                .toList();
    }

    private static Shape.Run text(Drawn drawn, String text) {
        return drawn.of(Kind.TEXT).stream()
                .map(mark -> (Shape.Run) mark.shape())
                .filter(run -> run.text().equals(text))
                .findFirst()
                .orElseThrow();
    }
}
