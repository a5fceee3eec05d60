package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.analysis.Analysis;
import groundbass.checks.Checks;
import groundbass.checks.level.LevelSuggestion;
import groundbass.fingering.Fingering;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What the editor asks of a line while it is typed, warm: findings, theory and fingering of 64 bars, the demo's slap line
 * written eight times. Anchor: the performance of the same line, which they all need.
 */
final class ChecksBench {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds", "01-rope-and-pulley", "line.txt");
    private static final Pattern NUMBER = Pattern.compile("\\bbar (\\d+)");
    private static final int TIMES = 10;

    private ChecksBench() {}

    public static void main(String[] args) throws Exception {
        Line line = line(8);
        var fingering = Fingering.of(line);
        var ms = Timing.medians(
                TIMES,
                () -> Checks.of(line),
                () -> theory(line),
                () -> Fingering.of(line),
                () -> fingering.others(Passage.bar(3), 5),
                () -> LevelSuggestion.of(line),
                () -> Performance.of(line),
                () -> Walkthrough.of(line, Messages.of(Locale.ENGLISH)));
        int notes = line.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
        print(
                "%d bars, %d notes, %d findings",
                line.bars().size(), notes, Checks.of(line).size());
        print("findings (theory and fingering in them)  %6.2f ms   aim under 20", ms[0]);
        print("  theory alone                           %6.2f ms", ms[1]);
        print("  fingering alone                        %6.2f ms", ms[2]);
        print("five other ways of one bar               %6.2f ms", ms[3]);
        print("suggested level                          %6.2f ms", ms[4]);
        print("walkthrough                              %6.2f ms   aim, with findings, under 30", ms[6]);
        print("  anchor: performance                    %6.2f ms; ratio of findings %.1f", ms[5], ms[0] / ms[5]);
    }

    private static Object theory(Line line) {
        var analysis = Analysis.of(line);
        return analysis.together().size() + analysis.key().candidates().size();
    }

    /** The demo's line with its bars written so many times, numbered through. */
    private static Line line(int times) throws Exception {
        String text = Files.readString(DEMO);
        int first = text.indexOf("\nbar ") + 1;
        String bars = text.substring(first);
        int count = (int) bars.lines().filter(row -> row.startsWith("bar ")).count();
        String all = IntStream.range(0, times)
                .mapToObj(i -> NUMBER.matcher(bars)
                        .replaceAll(found -> "bar " + (Integer.parseInt(found.group(1)) + i * count)))
                .collect(Collectors.joining("\n"));
        return LineText.read("bench.line", text.substring(0, first) + all).line();
    }
}
