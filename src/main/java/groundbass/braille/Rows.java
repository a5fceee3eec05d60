package groundbass.braille;

import groundbass.braille.CellGroup.Gap;
import java.util.ArrayList;
import java.util.List;

/**
 * Rows of at most {@value BrailleSheet#WIDTH} cells (rule: braille-rows). A row that begins with a bar has its number
 * in the first cells; what goes on from the row above begins in the third. Mutable; one for a line.
 */
final class Rows {
    private static final Cells INDENT = Cells.blanks(2);

    private final List<Cells> done = new ArrayList<>();
    private Cells row = Cells.NONE;
    private boolean fresh = true;

    /** A row of its own that is no music. */
    void text(List<Cells> rows) {
        end();
        done.addAll(rows);
    }

    /** A bar: where it fits beside the bars before it, else in a row of its own, else divided over several. */
    void bar(int number, List<CellGroup> units) {
        boolean beside = !row.isEmpty() && row.length() + 1 + width(units, fresh) <= BrailleSheet.WIDTH;
        if (beside) {
            row = row.plus(Cells.BLANK);
        } else {
            end();
            row = BrailleSigns.number(number).plus(Cells.BLANK);
            if (!fits(units, 0, 1)) {
                end();
                row = INDENT;
            }
        }
        int from = 0;
        while (from < units.size()) {
            int to = fitting(units, from);
            put(units.subList(from, to));
            if (to < units.size()) {
                row = units.get(to).gap() == Gap.JOINED ? row.plus(BrailleSigns.HYPHEN) : row;
                end();
                row = INDENT;
            }
            from = to;
        }
    }

    List<Cells> all() {
        end();
        return done;
    }

    private void end() {
        if (!row.isEmpty()) {
            done.add(row);
        }
        row = Cells.NONE;
        fresh = true;
    }

    private void put(List<CellGroup> units) {
        for (int i = 0; i < units.size(); i++) {
            var unit = units.get(i);
            row = i > 0 && unit.gap() == Gap.BLANK ? row.plus(Cells.BLANK) : row;
            row = row.plus(unit.cells(fresh));
            fresh = fresh && !unit.sounds();
        }
    }

    private static int width(List<CellGroup> units, boolean fresh) {
        int width = 0;
        boolean first = fresh;
        for (int i = 0; i < units.size(); i++) {
            var unit = units.get(i);
            width += (i > 0 && unit.gap() == Gap.BLANK ? 1 : 0)
                    + unit.cells(first).length();
            first = first && !unit.sounds();
        }
        return width;
    }

    /** Up to which unit the row is filled: all that fit, or up to a beat if that leaves no more than half a row empty. */
    private int fitting(List<CellGroup> units, int from) {
        int most = from + 1;
        for (int to = from + 1; to <= units.size(); to++) {
            most = fits(units, from, to) ? to : most;
        }
        if (most == units.size()) {
            return most;
        }
        for (int to = most; to > from; to--) {
            boolean good = units.get(to).beat() || units.get(to).gap() == Gap.BLANK;
            if (good && row.length() + width(units.subList(from, to), fresh) >= BrailleSheet.WIDTH / 2) {
                return to;
            }
        }
        return most;
    }

    private boolean fits(List<CellGroup> units, int from, int to) {
        boolean hyphen = to < units.size() && units.get(to).gap() == Gap.JOINED;
        int width = row.length() + width(units.subList(from, to), fresh) + (hyphen ? 1 : 0);
        return width <= BrailleSheet.WIDTH;
    }

    /** Words in rows, the second and later ones from the third cell on. */
    static List<Cells> hanging(List<Cells> words) {
        var rows = new ArrayList<Cells>();
        for (var row : Literary.wrapped(words, BrailleSheet.WIDTH - INDENT.length())) {
            rows.add(rows.isEmpty() ? row : INDENT.plus(row));
        }
        return rows;
    }

    static Cells centred(Cells row) {
        return Cells.blanks((BrailleSheet.WIDTH - row.length()) / 2).plus(row);
    }
}
