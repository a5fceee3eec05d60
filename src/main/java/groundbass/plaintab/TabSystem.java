package groundbass.plaintab;

import groundbass.plaintab.TabBar.Said;
import groundbass.score.Fraction;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Bars, or a piece of one, side by side: rows over the strings, the strings, a row under them. */
final class TabSystem {
    /** The widest signs before a bar and behind it, and a dash. */
    private static final int BARLINES = 6;

    private final Tuning tuning;
    private final int margin;
    private final List<Piece> pieces;

    /** Some columns of a bar, and whether it begins or ends with them. */
    private record Piece(TabBar bar, List<TabColumn> columns, boolean begins, boolean ends) {}

    private TabSystem(Tuning tuning, int margin, List<Piece> pieces) {
        this.tuning = tuning;
        this.margin = margin;
        this.pieces = List.copyOf(pieces);
    }

    static List<TabSystem> of(List<TabBar> bars, Tuning tuning) {
        int margin = IntStream.rangeClosed(1, tuning.size())
                        .map(string -> name(tuning, string).length())
                        .max()
                        .orElseThrow()
                + 1;
        int room = PlainTab.WIDTH - margin - BARLINES;
        var systems = new ArrayList<TabSystem>();
        var row = new TabSystem(tuning, margin, List.of());
        for (var piece :
                bars.stream().flatMap(bar -> pieces(bar, room).stream()).toList()) {
            var longer = row.with(piece);
            boolean fresh =
                    !piece.begins() || piece.bar().fresh() || longer.string(1).length() > PlainTab.WIDTH;
            if (fresh && !row.pieces.isEmpty()) {
                systems.add(row);
                longer = new TabSystem(tuning, margin, List.of(piece));
            }
            row = longer;
        }
        systems.add(row);
        return systems;
    }

    private TabSystem with(Piece piece) {
        var more = new ArrayList<>(pieces);
        more.add(piece);
        return new TabSystem(tuning, margin, more);
    }

    /** The whole bar where it fits into a row, else as much of it as fits, up to a beat where there is one. */
    private static List<Piece> pieces(TabBar bar, int room) {
        var pieces = new ArrayList<Piece>();
        int from = 0;
        while (from < bar.columns().size()) {
            int to = end(bar.columns(), from, room);
            pieces.add(new Piece(
                    bar,
                    bar.columns().subList(from, to),
                    from == 0,
                    to == bar.columns().size()));
            from = to;
        }
        return pieces;
    }

    private static int end(List<TabColumn> columns, int from, int room) {
        int fits = from;
        int beat = from;
        int filled = 0;
        while (fits < columns.size() && filled + columns.get(fits).width() <= room) {
            filled += columns.get(fits).width();
            fits++;
            beat = fits < columns.size() && columns.get(fits).beat() ? fits : beat;
        }
        if (fits == columns.size()) {
            return fits;
        }
        return beat > from ? beat : Math.max(fits, from + 1);
    }

    private static String name(Tuning tuning, int string) {
        return tuning.string(string).pitch().name().toString();
    }

    /** Empty ones are left out. */
    List<String> rows() {
        var sections = new TabRow();
        var heads = new TabRow();
        var chords = new TabRow();
        var words = new TabRow();
        var counts = new TabRow();
        var under = new TabRow();
        int x = margin;
        for (int i = 0; i < pieces.size(); i++) {
            var piece = pieces.get(i);
            if (piece.begins()) {
                sections.put(x, piece.bar().section());
                heads.put(x, piece.bar().head());
            }
            x += opening(i).length() + 1;
            for (int c = 0; c < piece.columns().size(); c++) {
                var column = piece.columns().get(c);
                counts.put(x, column.count());
                under.put(x, column.under());
                said(chords, x, piece.bar().chords(), piece, c);
                said(words, x, piece.bar().words(), piece, c);
                x += column.width();
            }
        }
        var rows = new ArrayList<String>();
        for (var row : List.of(sections, heads, words, chords, counts)) {
            rows.addAll(Fitted.rows(row));
        }
        for (int string = 1; string <= tuning.size(); string++) {
            rows.add(string(string));
        }
        rows.addAll(Fitted.rows(under));
        return rows;
    }

    /** What is said from this column's moment on and before the next one's. */
    private static void said(TabRow row, int x, List<Said> all, Piece piece, int index) {
        var columns = piece.columns();
        var from = columns.get(index).at();
        var until = index + 1 < columns.size() ? columns.get(index + 1).at() : next(piece);
        all.stream()
                .filter(said -> !said.at().isBefore(from) && said.at().isBefore(until))
                .forEach(said -> row.put(x, said.text()));
    }

    /** The moment of the bar's next piece; beyond the bar where there is none. */
    private static Fraction next(Piece piece) {
        var last = piece.columns().get(piece.columns().size() - 1).at();
        return piece.bar().columns().stream()
                .map(TabColumn::at)
                .filter(at -> at.isAfter(last))
                .findFirst()
                .orElse(Fraction.of(Integer.MAX_VALUE));
    }

    private String string(int string) {
        var row = new StringBuilder(TabRow.padded(name(tuning, string), margin));
        for (int i = 0; i < pieces.size(); i++) {
            row.append(opening(i)).append('-');
            for (var column : pieces.get(i).columns()) {
                String figure = column.figures().getOrDefault(string, "");
                row.append(figure).append("-".repeat(column.width() - figure.length()));
            }
        }
        return row.append(closing()).toString();
    }

    /** The line before a piece: how the one before it ends and this one begins. */
    private String opening(int index) {
        boolean ends = index > 0 && ends(pieces.get(index - 1));
        var piece = pieces.get(index);
        boolean starts = piece.begins() && piece.bar().repeats().start();
        if (!piece.begins()) {
            return "-";
        }
        return (ends ? ":" : "") + "|" + (starts ? ":" : "");
    }

    private String closing() {
        var last = pieces.get(pieces.size() - 1);
        if (!last.ends()) {
            return "";
        }
        return (ends(last) ? ":" : "") + "|";
    }

    private static boolean ends(Piece piece) {
        return piece.ends() && piece.bar().repeats().end().isPresent();
    }
}
