package groundbass.audience.statistics;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Rows as RFC 4180 has them: cells parted by commas, lines ended by CRLF, a cell in quotes where it holds a comma, a
 * quote or a line end, quotes doubled. A cell that a spreadsheet would run as a formula (it begins with one of
 * {@code = + - @}, a tab or a carriage return) gets an apostrophe in front. Each row is written at once and forgotten.
 */
final class Csv {
    private static final String RUNS_AS_FORMULA = "=+-@\uFF1D\uFF0B\uFF0D\uFF20\t\r\n";

    private final Appendable out;

    Csv(Appendable out) {
        this.out = out;
    }

    void row(List<String> cells) {
        try {
            out.append(cells.stream().map(cell -> quoted(guarded(cell))).collect(Collectors.joining(",", "", "\r\n")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String guarded(String cell) {
        boolean first = !cell.isEmpty() && RUNS_AS_FORMULA.indexOf(cell.charAt(0)) >= 0;
        String bare = cell.stripLeading();
        boolean afterSpace = !bare.isEmpty() && RUNS_AS_FORMULA.indexOf(bare.charAt(0)) >= 0;
        return first || afterSpace ? "'" + cell : cell;
    }

    private static String quoted(String cell) {
        boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
