package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Line text to sheet, picture and MIDI, warm. The line is the demo's slap line, its eight bars written twice: sixteen
 * dense bars. Floors: what PDFBox and the JDK need to write about as much.
 */
final class LineBench {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds", "01-rope-and-pulley", "line.txt");
    private static final Pattern NUMBER = Pattern.compile("\\bbar (\\d+)");
    private static final int TIMES = 10;

    private LineBench() {}

    public static void main(String[] args) throws Exception {
        var sheets = new Sheets(Messages.of(Locale.ENGLISH));
        String text = repeated(2);
        Line line = read(text);
        byte[] midi = midi(line);
        var sequence = Floors.sequence(midi);
        var ms = Timing.medians(
                TIMES,
                () -> all(sheets, text),
                () -> read(text),
                () -> sheets.svg(line, 110, ""),
                () -> pdf(sheets, line),
                Floors::pdf,
                () -> midi(line),
                () -> Floors.midi(sequence));
        print("%d bars, %d characters", line.bars().size(), text.length());
        print("text -> SVG + PDF + MIDI  %7.2f ms   aim under 25", ms[0]);
        print("  text -> line            %7.2f ms", ms[1]);
        print(
                "  SVG                     %7.2f ms   %d bytes",
                ms[2], sheets.svg(line, 110, "").length());
        print("  PDF                     %7.2f ms   %d bytes, aim under 10", ms[3], pdf(sheets, line).length);
        print(
                "    floor: 400 fills, 200 texts %.2f ms, %d bytes; ratio %.1f",
                ms[4], Floors.pdf().length, ms[3] / ms[4]);
        print("  MIDI                    %7.2f ms   %d bytes", ms[5], midi.length);
        print("    floor: the JDK's writer     %.2f ms; ratio %.1f", ms[6], ms[5] / ms[6]);
        parse();
    }

    private static void parse() throws Exception {
        String half = repeated(63);
        String whole = repeated(125);
        var ms = Timing.medians(5, () -> read(whole), () -> read(half));
        print("parse of 1,000 bars       %7.2f ms   aim under 50; of 504 bars %.2f ms", ms[0], ms[1]);
    }

    private static Object all(Sheets sheets, String text) {
        Line line = read(text);
        return sheets.svg(line, 110, "").length() + pdf(sheets, line).length + midi(line).length;
    }

    private static Line read(String text) {
        var reading = LineText.read("bench.line", text);
        if (!reading.problems().isEmpty()) {
            throw new IllegalStateException(reading.problems().toString());
        }
        return reading.line();
    }

    private static byte[] pdf(Sheets sheets, Line line) {
        return sheets.pdf(line, Sheets.Imprint.of(line));
    }

    private static byte[] midi(Line line) {
        return MidiFile.of(Performance.of(line, Playing.at(100)));
    }

    /** The demo's line with its bars written so many times, numbered through. */
    private static String repeated(int times) throws Exception {
        String text = Files.readString(DEMO);
        int first = text.indexOf("\nbar ") + 1;
        String bars = text.substring(first);
        int count = (int) bars.lines().filter(row -> row.startsWith("bar ")).count();
        return text.substring(0, first)
                + IntStream.range(0, times)
                        .mapToObj(i -> shifted(bars, i * count))
                        .collect(Collectors.joining("\n"));
    }

    private static String shifted(String bars, int by) {
        return NUMBER.matcher(bars).replaceAll(found -> "bar " + (Integer.parseInt(found.group(1)) + by));
    }
}
