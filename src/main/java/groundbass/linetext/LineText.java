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
import groundbass.score.Line;
import java.util.List;
import java.util.stream.Collectors;
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
     * The notes of one bar alone, as text: how they are struck where they do not say so themselves, then what is played on
     * which counts. Whatever else stands around them, the same notes are the same text.
     *
     * @param index of the bar in the line, from 0
     */
    public static String notes(Line line, int index) {
        var header = line.header();
        var bar = line.bars().get(index).withDirections(List.of());
        var now = line.inForce().get(index);
        var neck = new PlaceResolver(header.tuning(), header.frets());
        var counts = new BarPrinter(bar, now, neck, new PrinterState(List.of(bar), List.of(now)))
                .said().stream().map(said -> said.counts() + " " + said.events());
        return Stream.concat(Stream.of(now.style().word()), counts).collect(Collectors.joining("\n"));
    }
}
