package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import java.util.List;

/**
 * Two voices at one moment share a column; where their heads would touch, the lower voice moves right (handbooks, from
 * memory). Heads of one shape on one place are one head with two stems.
 */
final class VoiceShift {
    private static final double GAP = 0.12;
    private static final double PARENTHESIS = 0.5;

    private VoiceShift() {}

    static List<Cell> apart(List<Cell> cells) {
        if (cells.size() < 2 || cells.get(0).isRest() || cells.get(1).isRest()) {
            return cells;
        }
        var upper = cells.get(0);
        var lower = cells.get(1);
        if (upper.lowest() - lower.highest() >= 2 || isShared(upper, lower)) {
            return cells;
        }
        double parentheses = (hasGhost(upper) ? PARENTHESIS : 0) + (hasGhost(lower) ? PARENTHESIS : 0);
        double right = Math.max(upper.headsRight() + parentheses, flagRight(upper));
        return List.of(upper, lower.shifted(right - lower.headsLeft() + GAP));
    }

    /** The upper note's flag hangs beside it, where the lower one would stand. */
    private static double flagRight(Cell upper) {
        return upper.flags() == 0 ? 0 : upper.stemDx() + MusicFont.bravura().width(Glyph.flag(upper.flags(), true));
    }

    private static boolean hasGhost(Cell cell) {
        return cell.heads().stream().anyMatch(head -> Heads.isGhost(head.head()));
    }

    private static boolean isShared(Cell upper, Cell lower) {
        return upper.heads().size() == 1
                && lower.heads().size() == 1
                && upper.lowest() == lower.lowest()
                && upper.heads().get(0).glyph() == lower.heads().get(0).glyph()
                && upper.element().value().dots() == lower.element().value().dots()
                && upper.heads().get(0).head().note().string()
                        == lower.heads().get(0).head().note().string();
    }
}
