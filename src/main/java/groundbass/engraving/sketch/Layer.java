package groundbass.engraving.sketch;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.score.Passage;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The marks of one staff and around it; the staff's top line is at height zero. */
public final class Layer {
    private final List<Mark> marks = new ArrayList<>();
    private final Map<HeadPlace, Point> ends = new IdentityHashMap<>();
    private final Skyline above;
    private final Skyline below;
    private final double height;
    private final boolean tab;

    Layer(double width, double height, boolean tab) {
        this.height = height;
        this.tab = tab;
        this.above = new Skyline(width, 0);
        this.below = new Skyline(width, height);
        above.raise(0, width, 0.3);
        below.raise(0, width, height + 0.3);
    }

    public boolean isTab() {
        return tab;
    }

    public double height() {
        return height;
    }

    public List<Mark> marks() {
        return marks;
    }

    public Skyline above() {
        return above;
    }

    public Skyline below() {
        return below;
    }

    void add(Mark mark) {
        marks.add(mark);
        for (var box : mark.shape().pieces()) {
            above.raise(box.left(), box.right(), -box.top());
            below.raise(box.left(), box.right(), box.bottom());
        }
    }

    public void add(Kind kind, Passage owner, Shape shape) {
        add(Mark.of(kind, owner, shape));
    }

    public void add(Kind kind, Shape shape) {
        add(Mark.free(kind, shape));
    }

    void add(Kind kind, Optional<Passage> owner, Shape shape) {
        add(new Mark(kind, owner, shape));
    }

    /** Where a string that was bent sounds last: what leads on from its note begins there (rule: curve-from-bend). */
    public void end(HeadPlace bent, Point at) {
        ends.put(bent, at);
    }

    public Optional<Point> end(HeadPlace head) {
        return Optional.ofNullable(ends.get(head));
    }

    /** The highest height in use over a stretch; negative is above the staff. */
    public double top(double left, double right) {
        return -above.over(left, right);
    }

    public double bottom(double left, double right) {
        return below.over(left, right);
    }
}
