package groundbass.linetext;

import groundbass.linetext.assemble.LineAssembler;
import groundbass.linetext.assemble.Origins;
import groundbass.linetext.print.LinePrinter;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.read.TextReader;
import groundbass.remark.Source;
import groundbass.score.Line;

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
}
