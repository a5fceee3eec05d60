package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;

/** Figures under the notes, as the options give them: degrees of the chord, with drawn accidentals. */
public final class Figures implements Concern {
    private static final double SIZE = 1.6;
    private static final double SIGN_SCALE = 0.5;
    private static final double RAISE = 0.45;
    private static final double GAP = 0.6;
    private static final double SPACE = 0.5;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.2);
        var told = new HashSet<Position>();
        for (var spot : sketch.spots()) {
            boolean begins =
                    spot.cell().heads().stream().anyMatch(head -> !head.head().tiedFrom());
            var moment = spot.owner().from();
            String text =
                    begins && told.add(moment) ? sketch.options().figures().apply(moment) : "";
            if (!text.isEmpty()) {
                sketch.use(Sign.DEGREE);
                var word = word(text);
                var box = word.box();
                row.add(Kind.FIGURE, spot.owner(), word.moved(spot.middle() - (box.left() + box.right()) / 2, 0));
            }
        }
        row.placeBelow(sketch.lower(), GAP);
    }

    /** A figure on a baseline of height zero: {@code b7}, or {@code 1 3 b7} for notes together. */
    public static Shape.Word word(String figure) {
        List<Shape> shapes = new ArrayList<>();
        double x = 0;
        for (char c : figure.toCharArray()) {
            if (c == ' ') {
                x += SPACE;
            } else if (c == 'b' || c == '#') {
                var glyph = c == 'b' ? Glyph.FLAT : Glyph.SHARP;
                shapes.add(new Shape.Sign(glyph, new Point(x, -RAISE), SIGN_SCALE));
                x += MusicFont.bravura().width(glyph) * SIGN_SCALE + 0.05;
            } else {
                var run = new Shape.Run(String.valueOf(c), Face.REGULAR, SIZE, new Point(x, 0), Align.START);
                shapes.add(run);
                x += run.width();
            }
        }
        return new Shape.Word(figure.replace('b', '\u266d').replace('#', '\u266f'), shapes);
    }
}
