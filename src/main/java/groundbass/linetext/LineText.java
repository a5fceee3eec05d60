package groundbass.linetext;

import groundbass.linetext.assemble.LineAssembler;
import groundbass.linetext.assemble.Origins;
import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.print.BarPrinter;
import groundbass.linetext.print.LinePrinter;
import groundbass.linetext.print.PrinterState;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.read.TextReader;
import groundbass.remark.Source;
import groundbass.score.Bar;
import groundbass.score.Header;
import groundbass.score.InForce;
import groundbass.score.Line;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The written form of a line: text that reads as a player counts aloud. */
public final class LineText {
    private LineText() {}

    /** Reads a text without a name. */
    public static Reading read(String text) {
        return read("", text);
    }

    /**
     * Reads a text. A line always comes out: what cannot be read is left out or becomes silence, and each such place is
     * a problem.
     *
     * @param name what reports call the text, such as a file's name
     */
    public static Reading read(String name, String text) {
        var source = Source.of(name, text);
        var problems = new Problems();
        var origins = new Origins(source);
        var raw = new TextReader(source, problems).read();
        var line = new LineAssembler(raw, origins, problems).assemble();
        return new Reading(line, problems.inOrder(), origins);
    }

    /** The canonical text of a line; reading it gives the same line and no problem. Ends with a line end. */
    public static String print(Line line) {
        return new LinePrinter(line).print();
    }

    /**
     * The notes of some bars alone, as text: of each how they are struck where they do not say so themselves, then what is
     * played on which counts. Whatever else stands around them, the same notes are the same text.
     *
     * @param first index of a bar in the line, from 0
     * @param last  the same, and none before {@code first}
     */
    public static String notes(Line line, int first, int last) {
        var inForce = line.inForce();
        return IntStream.rangeClosed(first, last)
                .boxed()
                .flatMap(index -> notes(line.header(), line.bars().get(index), inForce.get(index)))
                .collect(Collectors.joining("\n"));
    }

    private static Stream<String> notes(Header header, Bar whole, InForce now) {
        var bar = whole.withDirections(List.of());
        var neck = new PlaceResolver(header.tuning(), header.frets());
        var counts = new BarPrinter(bar, now, neck, new PrinterState(List.of(bar), List.of(now)))
                .said().stream().map(said -> said.counts() + " " + said.events());
        return Stream.concat(Stream.of(now.style().word()), counts);
    }
}
