package groundbass.engraving;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Passage;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What must hold for every line, on paper of every width. Each failure names its seed. */
class LayoutPropertyTest {
    private static final int LINES = Integer.getInteger("engraving.lines", 120);
    private static final List<Paper> PAPERS =
            List.of(Paper.A4, Paper.LETTER, Paper.screen(48), Paper.screen(80), Paper.screen(110));

    private interface Check {
        List<String> faults(List<Page> pages);
    }

    private static void holds(Staves staves, Check check) {
        var faults = new ArrayList<String>();
        for (long seed = 0; seed < LINES; seed++) {
            var paper = PAPERS.get((int) (seed % PAPERS.size()));
            var options = TestWords.options(paper).with(staves).withSimile(seed % 3 == 0);
            for (var fault : check.faults(Layout.of(Writing.of(RandomLines.line(seed)), options))) {
                faults.add("seed " + seed + " " + staves + ": " + fault);
            }
        }
        assertThat(faults.stream().limit(15)).as(faults.size() + " faults").isEmpty();
    }

    private static List<String> overlaps(List<Page> pages) {
        return pages.stream().flatMap(page -> Overlaps.in(page).stream()).toList();
    }

    @Test
    void nothingLiesOnWhatItMustNotTouch() {
        holds(Staves.BOTH, LayoutPropertyTest::overlaps);
    }

    @Test
    void nothingLiesOnWhatItMustNotTouchInNotationAlone() {
        holds(Staves.NOTATION_ONLY, LayoutPropertyTest::overlaps);
    }

    @Test
    void nothingLiesOnWhatItMustNotTouchInTablatureAlone() {
        holds(Staves.TAB_ONLY, LayoutPropertyTest::overlaps);
    }

    @Test
    void nothingStandsOutsideThePage() {
        holds(Staves.BOTH, pages -> pages.stream()
                .flatMap(page -> page.marks().stream()
                        .filter(mark -> !new Box(0, 0, page.width(), page.height()).contains(mark.box())))
                .map(Mark::toString)
                .toList());
    }

    @Test
    void headsAndNumbersStandInTheOrderOfTime() {
        holds(Staves.BOTH, pages -> pages.stream()
                .flatMap(page -> page.parts().stream())
                .flatMap(part -> outOfOrder(part).stream())
                .toList());
    }

    private static List<String> outOfOrder(Page.Part system) {
        Map<Passage, Double> middles = new HashMap<>();
        for (var mark : system.marks()) {
            if (mark.kind() == Kind.HEAD && mark.owner().isPresent()) {
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
    void bothCanvasesAreAskedForTheSamePrimitives() {
        holds(Staves.BOTH, pages -> {
            var once = new RecordingCanvas();
            var twice = new RecordingCanvas();
            pages.forEach(page -> page.drawOn(once));
            pages.forEach(page -> page.drawOn(twice));
            return once.lines().equals(twice.lines()) ? List.of() : List.of("drawing differs the second time");
        });
    }
}
