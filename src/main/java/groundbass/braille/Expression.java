package groundbass.braille;

import groundbass.braille.CellGroup.Gap;
import java.util.ArrayList;
import java.util.List;

/**
 * Words among notes (rule: braille-word-sign).
 *
 * @param atOnce one or two short words, each after its sign, without blanks; else nothing
 * @param apart more words, the sign before the first and after the last of them, between blanks; else none
 */
record Expression(Cells atOnce, List<CellGroup> apart) {
    /** Cells of words that stand right before a note. */
    private static final int SHORT = 14;

    private static final int WIDEST = 30;

    static Expression of(String text, Literary literary) {
        var words = new ArrayList<Cells>();
        for (String word : text.strip().split("\\s+")) {
            words.add(literary.small(word));
        }
        var atOnce = words.stream().map(Expression::signed).reduce(Cells.NONE, Cells::plus);
        return words.size() <= 2 && atOnce.length() <= SHORT
                ? new Expression(atOnce, List.of())
                : new Expression(Cells.NONE, apart(words));
    }

    /** A word that does not begin with a letter could be taken for another sign that begins like the word sign. */
    private static Cells signed(Cells word) {
        return Character.isLetter(word.ascii().charAt(0))
                ? BrailleSigns.WORD.plus(word)
                : BrailleSigns.WORD.plus(Cells.DOT_3).plus(word);
    }

    private static List<CellGroup> apart(List<Cells> words) {
        var units = new ArrayList<CellGroup>();
        for (int i = 0; i < words.size(); i++) {
            var word = i == 0 ? signed(words.get(i)) : words.get(i);
            var left = i + 1 == words.size() ? word.plus(BrailleSigns.WORD) : word;
            var gap = Gap.BLANK;
            while (left.length() > WIDEST) {
                units.add(CellGroup.silent(gap, left.first(WIDEST), false));
                left = left.from(WIDEST);
                gap = Gap.SPLIT;
            }
            units.add(CellGroup.silent(gap, left, false));
        }
        return units;
    }

    /** Long words inside a bar follow a music hyphen and a blank. */
    void interrupt(List<CellGroup> units) {
        if (!apart.isEmpty() && !units.isEmpty()) {
            int last = units.size() - 1;
            units.set(last, units.get(last).after(BrailleSigns.HYPHEN));
        }
    }
}
