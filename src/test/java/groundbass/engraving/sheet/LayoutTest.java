package groundbass.engraving.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Staves;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.sign.TestWords;
import groundbass.engraving.svg.SheetSvg;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import groundbass.theory.Pitch;
import groundbass.writing.Writing;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LayoutTest {
    private static final Bar EIGHTHS = Bar.of(
            Meter.COMMON,
            IntStream.range(0, 8)
                    .mapToObj(i -> Note.plucked(
                            Fraction.of(i, 8),
                            Fraction.of(1, 8),
                            i % 4 == 3 ? Place.dead(4) : Place.of(4, i % 5),
                            i % 2 == 0 ? Technique.SLAP : Technique.POP))
                    .toList());

    private static Line bars(int count) {
        return new Line(Header.PLAIN, Collections.nCopies(count, EIGHTHS));
    }

    private static List<Page> lay(Line line, SheetOptions options) {
        return Layout.of(Writing.of(line), options);
    }

    private static List<Page.Part> systems(Page page) {
        return page.parts().stream()
                .filter(part -> part.group().role() == Role.SYSTEM)
                .toList();
    }

    private static Set<Kind> kinds(List<Page> pages) {
        return pages.stream()
                .flatMap(page -> page.marks().stream())
                .map(Mark::kind)
                .collect(Collectors.toSet());
    }

    private static List<String> texts(List<Page> pages) {
        return pages.stream()
                .flatMap(page -> page.marks().stream())
                .filter(mark -> mark.shape() instanceof Shape.Run)
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
    }

    private static double staffRight(Page.Part system) {
        return system.marks().stream()
                .filter(mark -> mark.kind() == Kind.STAFF_LINE)
                .mapToDouble(mark -> mark.box().right())
                .max()
                .orElseThrow();
    }

    @Test // common practice, no source
    void everySystemButTheLastReachesTheRightMargin() {
        var pages = lay(bars(23), TestWords.options(Paper.A4));
        var systems = pages.stream().flatMap(page -> systems(page).stream()).toList();
        assertThat(systems).hasSizeGreaterThan(2);
        for (var system : systems.subList(0, systems.size() - 1)) {
            assertThat(staffRight(system)).isCloseTo(Paper.A4.width() - Paper.A4.margin(), within(0.01));
        }
    }

    @Test // rule: last-system-ragged: a last system filled to less than 60 to 75 % stays ragged
    void aLastSystemOfOneShortBarIsNotStretched() {
        var systems = systems(lay(bars(1), TestWords.options(Paper.A4)).get(0));
        assertThat(staffRight(systems.get(0))).isLessThan(0.7 * Paper.A4.width());
    }

    @Test // rule: bars-per-system: three or four bars of eighths to a system on A4
    void eighthsStandThreeOrFourBarsToASystem() {
        var systems = systems(lay(bars(12), TestWords.options(Paper.A4)).get(0));
        assertThat(systems).hasSizeBetween(3, 4);
        for (var system : systems) {
            var passage = system.group().passage().orElseThrow();
            assertThat(passage.to().bar() - passage.from().bar()).isBetween(3, 4);
        }
    }

    @Test
    void noSystemStandsAloneOnTheLastPage() {
        for (int count = 20; count < 60; count++) {
            var pages = lay(bars(count), TestWords.options(Paper.A4));
            assertThat(systems(pages.get(pages.size() - 1))).as(count + " bars").hasSizeGreaterThan(1);
        }
    }

    @Test
    void everyBarIsOnTheSheetOnce() {
        var pages = lay(bars(40), TestWords.options(Paper.LETTER));
        int next = 1;
        for (var page : pages) {
            for (var system : systems(page)) {
                assertThat(system.group().passage().orElseThrow().from().bar()).isEqualTo(next);
                next = system.group().passage().orElseThrow().to().bar();
            }
        }
        assertThat(next).isEqualTo(41);
    }

    @Test
    void aBarTooWideForThePaperMakesTheStavesSmaller() {
        var narrow = new Paper(20, java.util.OptionalDouble.empty(), 1, 1.75);
        var page = lay(bars(2), TestWords.options(narrow)).get(0);
        assertThat(page.staffSpace()).isLessThan(1.75);
        assertThat(page.width() * page.staffSpace()).isCloseTo(20 * 1.75, within(1e-6));
    }

    @Test
    void aScreenIsOnePageAsHighAsItsMusic() {
        var pages = lay(bars(50), TestWords.options(Paper.screen(48)));
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).height()).isGreaterThan(200);
    }

    @Test
    void eachChoiceOfStavesDrawsOnlyItsOwn() {
        var options = TestWords.options(Paper.A4).withLegend(false);
        assertThat(kinds(lay(bars(4), options))).contains(Kind.HEAD, Kind.FRET, Kind.TECHNIQUE);
        assertThat(kinds(lay(bars(4), options.with(Staves.NOTATION_ONLY))))
                .contains(Kind.HEAD, Kind.TECHNIQUE)
                .doesNotContain(Kind.FRET);
        assertThat(kinds(lay(bars(4), options.with(Staves.TAB_ONLY))))
                .contains(Kind.FRET, Kind.TECHNIQUE, Kind.STEM)
                .doesNotContain(Kind.HEAD, Kind.ACCIDENTAL);
    }

    @Test
    void theLegendListsTheSignsInUseAndNoOther() {
        assertThat(texts(lay(bars(4), TestWords.options(Paper.A4))))
                .contains("slap", "pop", "dead")
                .doesNotContain("hammer", "tap", "ghost", "bend");
    }

    @Test
    void lettersAreTheEducatorsChoice() {
        var letters = TechniqueLetters.usual().with(Technique.SLAP, new TechniqueLetters.Letter.Text("S", true));
        assertThat(texts(lay(bars(1), TestWords.options(Paper.A4).with(letters))))
                .contains("S", "P")
                .doesNotContain("T");
    }

    @Test
    void onlyAnUnusualTuningIsNamed() {
        var dropped = groundbass.score.Tuning.sounding("G2", "D2", "A1", "D1");
        assertThat(dropped.string(4).pitch()).isEqualTo(Pitch.of(groundbass.theory.Letter.D, 1));
        var line = new Line(Header.PLAIN.with(dropped), List.of(EIGHTHS));
        assertThat(texts(lay(line, TestWords.options(Paper.A4)))).contains("Tuning, low to high: D A D G");
        assertThat(texts(lay(bars(1), TestWords.options(Paper.A4)))).noneMatch(text -> text.startsWith("Tuning"));
    }

    @Test
    void aRepeatedBarIsASignWhereThatIsWanted() {
        var bar = EIGHTHS.with(groundbass.score.Copy.of(1));
        var line = new Line(Header.PLAIN, List.of(EIGHTHS, bar, bar));
        assertThat(kinds(lay(line, TestWords.options(Paper.A4).withSimile(true))))
                .contains(Kind.SIMILE);
        assertThat(kinds(lay(line, TestWords.options(Paper.A4)))).doesNotContain(Kind.SIMILE);
    }

    @Test
    void everyEventOnAPageSaysItsBarAndItsCount() {
        var svg = SheetSvg.of(lay(bars(2), TestWords.options(Paper.screen(110))).get(0), "s", "en", "Title", "Words");
        assertThat(svg).contains("class=\"event\" data-bar=\"2\" data-at=\"7/8\" data-to-bar=\"2\" data-to=\"1\"");
    }

    @Test // a limit of ours: sixteen bars under 40 KB compressed
    void sixteenBarsAreASmallDrawing() throws Exception {
        var page = lay(RandomLines.line(5, 16), TestWords.options(Paper.screen(110)))
                .get(0);
        var out = new java.io.ByteArrayOutputStream();
        try (var zip = new java.util.zip.GZIPOutputStream(out)) {
            zip.write(SheetSvg.of(page, "s", "en", "Title", "Words").getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
        assertThat(out.size()).isLessThan(40_000);
    }
}
