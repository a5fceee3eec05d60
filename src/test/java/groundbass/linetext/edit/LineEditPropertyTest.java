package groundbass.linetext.edit;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.BadTexts;
import groundbass.linetext.LineText;
import groundbass.linetext.WildLines;
import groundbass.linetext.edit.Outline.BarPart;
import groundbass.linetext.edit.Outline.CountPart;
import groundbass.linetext.source.Limits;
import groundbass.score.Bar;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.score.Shift;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;

/** What holds for every text. The seed is told where something does not. */
class LineEditPropertyTest {
    private static final int SEEDS = 60;

    @Test
    void editingACountChangesItsCharactersAlone() {
        each(RandomLines::line, this::checkEveryCount);
        each(WildLines::line, this::checkEveryCount);
    }

    private void checkEveryCount(long seed, String text) {
        for (var bar : Outline.of(text).bars()) {
            for (var count : bar.counts()) {
                checkCount(seed, text, bar, count);
            }
        }
    }

    private void checkCount(long seed, String text, BarPart bar, CountPart count) {
        var edit = new Edit.Events(bar.number(), Count.parse(count.at()).orElseThrow(), "rest");
        String before = text.substring(0, count.start());
        String behind = text.substring(count.start() + count.events().length());
        assertThat(LineEdit.apply(text, edit))
                .as("seed %d, %s in%n%s", seed, edit, text)
                .isEqualTo(before + "rest" + behind);
    }

    @Test
    void otherBarsSoundAsBeforeWhenACountIsWritten() {
        each(RandomLines::line, (seed, text) -> {
            var before = LineText.read(text).line();
            var last = before.bars().size() - 1;
            var part = Outline.of(text).bars().get(last);
            if (!part.counts().isEmpty()) {
                var at = Count.parse(part.counts().get(0).at()).orElseThrow();
                var after = LineText.read(LineEdit.apply(text, new Edit.Events(part.number(), at, "rest")))
                        .line();
                assertThat(after.bars().subList(0, Math.max(0, last - 1)))
                        .as("seed %d", seed)
                        .isEqualTo(before.bars().subList(0, Math.max(0, last - 1)));
            }
        });
    }

    /** Two frets up and down again is where it was, but for names of notes and chords, which follow the key. */
    @Test
    void whatMovesUpTheNeckAndDownAgainIsWhereItWas() {
        var moved = new int[1];
        each(RandomLines::line, (seed, text) -> {
            int first = LineText.read(text).line().firstNumber();
            int last = first + LineText.read(text).line().bars().size() - 1;
            String up = LineEdit.apply(text, new Edit.Move(first, last, new Shift(0, 2)));
            moved[0] += up.equals(text) ? 0 : 1;
            String down = LineEdit.apply(up, new Edit.Move(first, last, new Shift(0, -2)));
            if (!up.equals(text)) {
                assertThat(places(down)).as("seed %d in%n%s", seed, text).isEqualTo(places(text));
            }
        });
        assertThat(moved[0]).as("lines that were moved").isPositive();
    }

    private static List<Object> places(String text) {
        return LineText.read(text).line().bars().stream()
                .flatMap(bar -> bar.notes().stream())
                .map(note -> List.<Object>of(note.onset(), note.length(), note.place()))
                .map(Object.class::cast)
                .toList();
    }

    @Test
    void aBarPutInAndTakenOutLeavesTheTextAsItWas() {
        each(RandomLines::line, (seed, text) -> {
            var line = LineText.read(text).line();
            for (int number = line.firstNumber();
                    number < line.firstNumber() + line.bars().size();
                    number++) {
                String more = LineEdit.apply(text, new Edit.AddBar(number));
                assertThat(LineEdit.apply(more, new Edit.DeleteBar(number + 1)))
                        .as("seed %d, bar %d in%n%s", seed, number, text)
                        .isEqualTo(text);
            }
        });
    }

    @Test
    void deletingABarLeavesTheNotesOfTheOthers() {
        each(RandomLines::line, (seed, text) -> {
            var line = LineText.read(text).line();
            var random = new Random(seed);
            int gone = random.nextInt(line.bars().size());
            if (line.bars().size() > 1 && isPlain(line, gone)) {
                String after = LineEdit.apply(text, new Edit.DeleteBar(line.firstNumber() + gone));
                var left = new ArrayList<>(line.bars());
                left.remove(gone);
                assertThat(notes(LineText.read(after).line().bars()))
                        .as("seed %d without %d%n%s%n%s", seed, gone, text, after)
                        .isEqualTo(notes(left));
            }
        });
    }

    /** Sounds that cross into or out of the bar, and signs and changes at it, may change what stands around it. */
    private static boolean isPlain(Line line, int index) {
        var bar = line.bars().get(index);
        boolean changes = bar.changes().equals(groundbass.score.Changes.NONE);
        boolean signs = line.bars().stream().allMatch(one -> one.repeats().equals(groundbass.score.Repeats.NONE));
        boolean held = line.bars().stream().anyMatch(one -> one.notes().stream()
                .anyMatch(note -> note.end().isAfter(one.to())));
        boolean arrives = line.bars().stream().anyMatch(one -> one.notes().stream()
                .anyMatch(note -> note.arrival().isPresent()));
        return changes && signs && !held && !arrives && !bar.isPickup();
    }

    private static List<?> notes(List<Bar> bars) {
        return bars.stream().map(Bar::notes).toList();
    }

    @Test
    void noChangeOfAnyTextThrows() {
        for (long seed = 0; seed < 300; seed++) {
            var random = new Random(seed);
            String text = new BadTexts(seed).spoil(LineText.print(RandomLines.line(seed)));
            for (var edit : edits(random)) {
                String after = LineEdit.apply(text, edit);
                assertThat(after).as("seed %d, %s", seed, edit).isNotNull();
            }
            assertThat(Outline.of(text).bars()).hasSizeLessThanOrEqualTo(Limits.MOST_BARS);
        }
    }

    private static List<Edit> edits(Random random) {
        int bar = random.nextInt(6);
        var at = new Count(1 + random.nextInt(5), random.nextInt(4));
        return List.of(
                new Edit.Events(bar, at, "E5, E8"),
                new Edit.Step(bar, at, groundbass.score.Fraction.of(1, 8), "A5 slap"),
                new Edit.AddCount(bar, at),
                new Edit.RemoveCount(bar, at),
                new Edit.AddBar(bar),
                new Edit.DeleteBar(bar),
                new Edit.Chords(bar, "Am7"),
                new Edit.Setting("tempo", "100"));
    }

    private interface Check {
        void of(long seed, String text);
    }

    private static void each(LongFunction<Line> lines, Check check) {
        for (long seed = 0; seed < SEEDS; seed++) {
            check.of(seed, commented(LineText.print(lines.apply(seed))));
        }
    }

    /** Comments where comments may stand. */
    private static String commented(String text) {
        return text.replaceAll("(?m)^(\\d.*)$", "$1   # as played").replaceAll("(?m)^bar", "# now\nbar");
    }
}
