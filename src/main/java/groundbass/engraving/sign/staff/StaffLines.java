package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;

/** The five lines of the notation staff. */
public final class StaffLines implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (int line = 0; line < 5; line++) {
            sketch.notation().add(Kind.STAFF_LINE, line(0, sketch.plan().width(), line, Measures.STAFF_LINE));
        }
    }

    public static Shape line(double left, double right, double y, double thickness) {
        return new Shape.Rect(new Box(left, y - thickness / 2, right, y + thickness / 2));
    }
}
