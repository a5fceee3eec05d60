package groundbass.braille;

import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A line as music braille, in rows of at most {@value #WIDTH} cells, with a heading, a key of what no sign says, and
 * the chords behind it. It reads the same decisions as the printed sheet: values, ties, tuplets, voices, names. The same
 * line, credits and language give the same bytes. No blind reader has proofread it; {@code src/main/docs/braille.md}
 * has its rules and what they rest on.
 */
public final class BrailleSheet {
    /** Cells of a row, and of most embossers' paper. */
    public static final int WIDTH = 40;

    /** Rows of a page. */
    public static final int HEIGHT = 25;

    private static final String ROW_ENDS = "\r\n";
    private static final String PAGE_ENDS = "\f";

    private final List<Cells> rows;

    private BrailleSheet(List<Cells> rows) {
        this.rows = List.copyOf(rows);
    }

    /** With the credits that the line itself has. */
    public static BrailleSheet of(Line line, Messages messages) {
        return of(Writing.of(line), Credits.of(line.header()), messages);
    }

    public static BrailleSheet of(WrittenLine line, Credits credits, Messages messages) {
        var legend = new BrailleKey(messages);
        var heading = new Heading(messages);
        var bars = BarCells.of(line, legend, true);
        var rows = new Rows();
        for (int i = 0; i < bars.size(); i++) {
            var before = heading.before(line.bars().get(i).bar().changes());
            if (!before.isEmpty()) {
                rows.text(before);
            }
            rows.bar(line.line().firstNumber() + i, bars.get(i));
        }
        var sheet = new ArrayList<>(heading.of(line.line().header(), credits, legend));
        sheet.addAll(rows.all());
        sheet.addAll(new ChordList(messages).rows(line.line()));
        return new BrailleSheet(sheet);
    }

    /**
     * For embossers and braille displays: North American ASCII braille in pages of {@value #HEIGHT} rows, rows ended by
     * carriage return and line feed, a form feed after each page but the last.
     */
    public byte[] brf() {
        var text = new StringBuilder();
        for (int i = 0; i < rows.size(); i++) {
            text.append(i > 0 && i % HEIGHT == 0 ? PAGE_ENDS : "")
                    .append(rows.get(i).ascii())
                    .append(ROW_ENDS);
        }
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** The same cells as Unicode's braille patterns (ISO/IEC 10646), without pages, in UTF-8. */
    public byte[] unicode() {
        return rows.stream()
                .map(Cells::patterns)
                .collect(Collectors.joining(ROW_ENDS, "", ROW_ENDS))
                .getBytes(StandardCharsets.UTF_8);
    }

    /** The rows of cells, for tests of this room. */
    List<Cells> rows() {
        return rows;
    }
}
