package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** One line per string, open where a number stands on it, so that any background shows through (rule: tab-line-gap). */
public final class TabLines implements Concern {
    private static final double MARGIN = 0.14;
    private static final double SHORTEST_PIECE = 0.35;

    @Override
    public void draw(Sketch sketch) {
        for (int string = 1; string <= sketch.strings(); string++) {
            double y = Measures.stringY(string);
            double left = 0;
            for (var gap : gaps(sketch.tab(), y)) {
                piece(sketch, left, gap.left(), y);
                left = Math.max(left, gap.right());
            }
            piece(sketch, left, sketch.plan().width(), y);
        }
    }

    private static void piece(Sketch sketch, double left, double right, double y) {
        if (right - left > SHORTEST_PIECE) {
            sketch.tab().add(Kind.STAFF_LINE, StaffLines.line(left, right, y, Measures.TAB_LINE));
        }
    }

    private static List<Box> gaps(Layer tab, double y) {
        var gaps = new ArrayList<Box>();
        for (var mark : tab.marks()) {
            var box = mark.box().grown(MARGIN);
            if (mark.kind() == Kind.FRET && box.top() < y && box.bottom() > y) {
                gaps.add(box);
            }
        }
        gaps.sort(Comparator.comparingDouble(Box::left));
        return gaps;
    }
}
