package groundbass.engraving.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.RecordingCanvas;
import groundbass.engraving.options.Aids;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.options.Staves;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.sign.Overlaps;
import groundbass.engraving.sign.TestWords;
import groundbass.linetext.WildLines;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What must hold for every line of four to six strings, on paper of every width, with every choice of staves, similes
 * and long rests. Each failure names its seed.
 */
class LayoutPropertyTest {
    private static final int LINES = Integer.getInteger("engraving.lines", 2000);
    private static final int BATCH = 200;
    private static final List<Paper> PAPERS =
            List.of(Paper.A4, Paper.LETTER, Paper.screen(48), Paper.screen(60), Paper.screen(80), Paper.screen(110));

    static IntStream batches() {
        return IntStream.range(0, LINES / BATCH).map(batch -> batch * BATCH);
    }

    private static SheetOptions options(long seed) {
        var letters = TechniqueLetters.usual().with(Technique.SLAP, new TechniqueLetters.Letter.Text("Th", true));
        return SheetOptions.of(PAPERS.get((int) (seed / 3 % PAPERS.size())), new TestWords(), Header.NONE, Footer.NONE)
                .with(Staves.values()[(int) (seed % 3)])
                .with(seed % 7 == 0 ? letters : TechniqueLetters.usual())
                .withSimile(seed % 4 == 0)
                .withRestsTogether(seed % 5 == 0)
                .with(new Aids(seed % 2 == 0, seed % 6 == 0));
    }

    private static List<Page> lay(Line line, long seed) {
        return Layout.of(Writing.of(line), options(seed));
    }

    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("batches")
    void nothingCollidesOrLeavesThePageAndTimeRunsForward(int first) {
        var faults = new ArrayList<String>();
        for (long seed = first; seed < first + BATCH; seed++) {
            for (var page : lay(RandomLines.line(seed), seed)) {
                for (var fault : faults(page)) {
                    faults.add("seed " + seed + ": " + fault);
                }
            }
        }
        assertThat(faults.stream().limit(15)).as(faults.size() + " faults").isEmpty();
    }

    private static List<String> faults(Page page) {
        var faults = new ArrayList<>(Overlaps.in(page));
        var paper = new Box(0, 0, page.width(), page.height());
        page.marks().stream()
                .filter(mark -> !paper.contains(mark.box()))
                .forEach(mark -> faults.add("outside the page: " + mark));
        page.parts().forEach(part -> faults.addAll(outOfOrder(part)));
        return faults;
    }

    private static List<String> outOfOrder(Page.Part system) {
        Map<Passage, Double> middles = new HashMap<>();
        for (var mark : system.marks()) {
            if ((mark.kind() == Kind.HEAD || mark.kind() == Kind.FRET)
                    && mark.owner().isPresent()) {
                middles.merge(mark.owner().get(), mark.box().middle(), Math::max);
            }
        }
        var inTime = middles.keySet().stream()
                .sorted(Comparator.comparing(Passage::from))
                .toList();
        var faults = new ArrayList<String>();
        for (int i = 1; i < inTime.size(); i++) {
            boolean later = inTime.get(i - 1).from().compareTo(inTime.get(i).from()) < 0;
            if (later && middles.get(inTime.get(i - 1)) >= middles.get(inTime.get(i))) {
                faults.add(inTime.get(i) + " stands left of " + inTime.get(i - 1));
            }
        }
        return faults;
    }

    @Test
    void linesThatNoPlayerWouldWriteStillFindAPlaceOnThePage() {
        for (long seed = 0; seed < 200; seed++) {
            for (var page : lay(WildLines.line(seed), seed)) {
                var paper = new Box(0, 0, page.width(), page.height());
                assertThat(page.marks().stream().filter(mark -> !paper.contains(mark.box())))
                        .as("seed " + seed)
                        .isEmpty();
            }
        }
    }

    @Test
    void aPageIsDrawnTheSameEachTime() {
        for (long seed = 0; seed < 100; seed++) {
            var once = new RecordingCanvas();
            var twice = new RecordingCanvas();
            var pages = lay(RandomLines.line(seed), seed);
            pages.forEach(page -> page.drawOn(once));
            pages.forEach(page -> page.drawOn(twice));
            assertThat(once.lines()).as("seed " + seed).isEqualTo(twice.lines());
        }
    }
}
