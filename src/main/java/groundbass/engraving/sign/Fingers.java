package groundbass.engraving.sign;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;

/** Fretting fingers in a row under the last staff. */
final class Fingers implements Concern {
    private static final double SIZE = 1.5;
    private static final double GAP = 0.5;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.1);
        for (var spot : sketch.spots()) {
            for (var head : spot.cell().heads()) {
                var finger = head.head().note().ornaments().finger();
                if (finger.isPresent() && !head.head().tiedFrom()) {
                    sketch.use(Sign.FRETTING_FINGER);
                    String digit = Integer.toString(finger.getAsInt());
                    var at = new Point(spot.middle(), 0);
                    row.add(Kind.FINGER, spot.owner(), new Shape.Run(digit, Face.ITALIC, SIZE, at, Align.MIDDLE));
                }
            }
        }
        row.placeBelow(sketch.lower(), GAP);
    }
}
