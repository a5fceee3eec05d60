package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.spacing.Cell.DotPlace;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Dots of length (rule: dot-in-space, dots-of-chord, dot-beside-flag): in a space, the one above a head on a line, or
 * below it in the lower of two voices; one for each head of a chord, in spaces of their own; beyond a flag that would
 * touch them.
 */
final class Dots {
    private static final double TO_HEAD = 0.45;
    private static final double TO_FLAG = 0.2;
    private static final double PARENTHESIS = 0.5;
    private static final double STEP = 0.6;
    private static final int REST_POSITION = 5;

    private Dots() {}

    /**
     * @param right the right edge of all heads of the column
     * @param ghost whether one of them stands in parentheses
     */
    static List<DotPlace> place(Cell cell, double right, boolean ghost) {
        int dots = cell.element().value().dots();
        var places = new ArrayList<DotPlace>();
        if (dots == 0) {
            return places;
        }
        double left = cell.isRest()
                ? MusicFont.bravura().width(Glyph.rest(cell.element().value().base())) + TO_HEAD
                : pastFlag(cell, right + TO_HEAD + (ghost ? PARENTHESIS : 0));
        for (int position : positions(cell)) {
            for (int dot = 0; dot < dots; dot++) {
                places.add(new DotPlace(left + dot * STEP, position));
            }
        }
        return places;
    }

    private static double pastFlag(Cell cell, double left) {
        if (!cell.up() || cell.flags() == 0) {
            return left;
        }
        double flag = cell.stemDx() + MusicFont.bravura().width(Glyph.flag(cell.flags(), true));
        return Math.max(left, flag + TO_FLAG);
    }

    /** From the top, so that heads a second apart find spaces of their own. */
    private static Iterable<Integer> positions(Cell cell) {
        if (cell.isRest()) {
            return List.of(REST_POSITION);
        }
        boolean below = cell.voices() > 1 && cell.voice() == 1;
        var taken = new TreeSet<Integer>();
        for (int i = cell.heads().size() - 1; i >= 0; i--) {
            int head = cell.heads().get(i).position();
            int position = head % 2 != 0 ? head : below ? head - 1 : head + 1;
            while (taken.contains(position)) {
                position -= 2;
            }
            taken.add(position);
        }
        return taken;
    }
}
