package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Fretting fingers in a row under the last staff; those of a chord one under the other, in the order of its strings,
 * highest first, as the staff above them has them (rule: fretting-fingers).
 */
public final class Fingers implements Concern {
    private static final double SIZE = 1.75;
    private static final double GAP = 0.5;

    /** A digit, and the string that it belongs to. */
    private record Digit(int string, Spot spot, String text) {}

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.1);
        var spots = sketch.spots();
        for (int i = 0; i < spots.size(); ) {
            int start = i;
            while (i < spots.size() && spots.get(i).x() == spots.get(start).x()) {
                i++;
            }
            for (var digit : digits(spots.subList(start, i))) {
                sketch.use(Sign.FRETTING_FINGER);
                var at = new Point(digit.spot().middle(), 0);
                var run = new Shape.Run(digit.text(), Face.ITALIC, SIZE, at, Align.MIDDLE);
                row.add(Kind.FINGER, digit.spot().owner(), run);
            }
        }
        row.placeBelow(sketch.lower(), GAP);
    }

    private static List<Digit> digits(List<Spot> column) {
        var digits = new ArrayList<Digit>();
        for (var spot : column) {
            for (var head : spot.cell().heads()) {
                var note = head.head().note();
                if (note.ornaments().finger().isPresent() && !head.head().tiedFrom()) {
                    String text = Integer.toString(note.ornaments().finger().getAsInt());
                    digits.add(new Digit(note.string(), spot, text));
                }
            }
        }
        digits.sort(Comparator.comparingInt(Digit::string));
        return digits;
    }
}
