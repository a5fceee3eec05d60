package groundbass.engraving.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.sheet.Layout.Piece;
import groundbass.engraving.sign.TestWords;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How bars flow into systems, systems into pages, and lines after one another. */
class FlowTest {
    private static final String EIGHTHS = "1-4  E0*1, E1, E3, E5, E7, E5, E3, E1\n";

    /** Bars of eighths, with words on lines of their own before some of them. */
    private static Line line(int bars, String words, Integer... before) {
        var text = new StringBuilder("tempo 96\n");
        for (int i = 1; i <= bars; i++) {
            text.append(List.of(before).contains(i) ? words + "\n" : "").append("bar " + i + "\n" + EIGHTHS);
        }
        var reading = LineText.read(text.toString());
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    private static List<Page> lay(Line line) {
        return Layout.of(Writing.of(line), TestWords.options(Paper.A4));
    }

    private static List<Page> lay(int... bars) {
        var pieces = new ArrayList<Piece>();
        for (int count : bars) {
            var title = "Piece " + (pieces.size() + 1);
            pieces.add(new Piece(Writing.of(line(count, "")), new Header(title, "", "")));
        }
        return Layout.of(pieces, TestWords.options(Paper.A4));
    }

    private static List<Page.Part> systems(Page page) {
        return page.parts().stream()
                .filter(part -> part.group().role() == Role.SYSTEM)
                .toList();
    }

    private static List<Integer> firstBars(List<Page> pages) {
        return pages.stream()
                .flatMap(page -> systems(page).stream())
                .map(part -> part.group().passage().orElseThrow().from().bar())
                .toList();
    }

    private static double staffRight(Page.Part system) {
        return system.marks().stream()
                .filter(mark -> mark.kind() == Kind.STAFF_LINE)
                .mapToDouble(mark -> mark.box().right())
                .max()
                .orElseThrow();
    }

    @Test
    void aBarThatIsWantedAtTheHeadOfASystemStandsThere() {
        var firsts = firstBars(lay(line(12, "new system", 2, 7, 8)));
        assertThat(firsts).contains(1, 2, 7, 8);
    }

    @Test // rule: last-system-ragged
    void aSystemThatAWishCutsShortReachesTheMarginAsWell() {
        var systems = systems(lay(line(9, "new system", 2)).get(0));
        assertThat(staffRight(systems.get(0))).isCloseTo(Paper.A4.width() - Paper.A4.margin(), within(0.01));
        assertThat(staffRight(systems.get(1))).isCloseTo(Paper.A4.width() - Paper.A4.margin(), within(0.01));
    }

    @Test
    void aBarThatIsWantedAtTheHeadOfAPageStandsThere() {
        var pages = lay(line(12, "new page", 5, 11));
        assertThat(pages).hasSize(3);
        assertThat(firstBars(pages.subList(1, 2)).get(0)).isEqualTo(5);
        assertThat(firstBars(pages.subList(2, 3)).get(0)).isEqualTo(11);
    }

    @Test
    void aScreenHasNoPagesToBegin() {
        var options = TestWords.options(Paper.screen(80));
        assertThat(Layout.of(Writing.of(line(4, "new page", 3)), options)).hasSize(1);
    }

    @Test
    void anExerciseFollowsOnThePageWhereItFits() {
        var pages = lay(8, 4, 4);
        assertThat(pages).hasSize(1);
        assertThat(firstBars(pages)).containsSequence(1, 5).endsWith(1);
    }

    @Test
    void aHeadingStandsOverItsFirstSystem() {
        for (int bars = 4; bars < 80; bars += 4) {
            for (var page : lay(bars, 8, 8)) {
                var last = page.parts().stream()
                        .filter(part -> part.group().role() == Role.SYSTEM
                                || part.group().role() == Role.TITLE)
                        .reduce((one, two) -> two)
                        .orElseThrow();
                assertThat(last.group().role()).as(bars + " bars").isEqualTo(Role.SYSTEM);
            }
        }
    }

    @Test
    void eachSystemKnowsWhichLineItIsOf() {
        var pieces = lay(8, 4, 4).get(0).parts().stream()
                .filter(part -> part.group().role() == Role.SYSTEM)
                .map(part -> part.group().piece())
                .distinct();
        assertThat(pieces).containsExactly(0, 1, 2);
    }

    @Test
    void oneLegendOfAPageExplainsTheSignsOfAllItsLines() {
        var slapped = LineText.read("style slap\nbar 1\n1-4 E0\n").line();
        var popped = LineText.read("style pop\nbar 1\n1-4 E0\n").line();
        var pieces = List.of(new Piece(Writing.of(slapped), Header.NONE), new Piece(Writing.of(popped), Header.NONE));
        var texts = Layout.of(pieces, TestWords.options(Paper.A4)).get(0).marks().stream()
                .filter(mark -> mark.shape() instanceof Shape.Run)
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
        assertThat(texts).containsOnlyOnce("slap", "pop");
    }

    @Test // rule: legend-on-each-page
    void eachPageExplainsItsOwnSigns() {
        var slapped = LineText.read("style slap\nbar 1\n1-4 E0\nnew page\nstyle pop\nbar 2\n1-4 E0\n")
                .line();
        var pages = Layout.of(Writing.of(slapped), TestWords.options(Paper.A4));
        assertThat(pages).hasSize(2);
        var texts = pages.stream().map(FlowTest::texts).toList();
        assertThat(texts.get(0)).contains("slap").doesNotContain("pop");
        assertThat(texts.get(1)).contains("pop").doesNotContain("slap");
    }

    private static List<String> texts(Page page) {
        return page.marks().stream()
                .filter(mark -> mark.shape() instanceof Shape.Run)
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
    }

    @Test // rule: page-filled; full pages, and company for the last system
    void pagesAreFullAndTheLastSystemHasCompany() {
        for (int count = 20; count < 60; count++) {
            var pages = lay(line(count, ""));
            assertThat(systems(pages.get(pages.size() - 1))).as(count + " bars").hasSizeGreaterThan(1);
            var onPages = pages.stream().map(page -> systems(page).size()).toList();
            IntStream.range(0, onPages.size() - 1)
                    .forEach(i -> assertThat(onPages.get(i)).isGreaterThan(3));
        }
    }
}
