package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.staff.StaffLines;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Accidentals;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Positions;
import groundbass.score.Arrival;
import groundbass.writing.Head.Grace;

/** Grace notes: a small head with a crossed flag before the note. {@link GraceSlurs} leads from it to the note. */
public final class Graces implements Concern {
    private static final double STEM_LENGTH = 2.5;
    private static final double FROM_LEFT = 0.95;
    private static final double LINE = 0.12;

    /** What is drawn of one grace note: the nth of those that stand side by side before a chord. */
    interface Drawn {
        void draw(Sketch sketch, Spot spot, HeadPlace head, Arrival arrival, int nth);
    }

    @Override
    public void draw(Sketch sketch) {
        each(sketch, Graces::draw);
    }

    /** Every grace note that is shown. */
    static void each(Sketch sketch, Drawn drawn) {
        int nth = 0;
        double column = Double.NaN;
        for (var spot : sketch.spots()) {
            nth = spot.x() == column ? nth : 0;
            column = spot.x();
            for (var head : spot.cell().heads()) {
                var grace = head.head().note().arrival().filter(Arrival::isGrace);
                if (head.head().grace().isPresent() && grace.isPresent()) {
                    drawn.draw(sketch, spot, head, grace.get(), nth++);
                }
            }
        }
    }

    private static void draw(Sketch sketch, Spot spot, HeadPlace head, Arrival arrival, int nth) {
        if (sketch.options().staves().hasNotation()) {
            notation(sketch, spot, head, nth);
        }
    }

    /** @param nth of a chord's grace notes, which stand side by side */
    private static void notation(Sketch sketch, Spot spot, HeadPlace head, int nth) {
        var grace = head.head().grace().orElseThrow();
        int position = position(spot, grace);
        double y = Measures.y(position);
        double x = left(spot, nth);
        double scale = Measures.GRACE_SCALE;
        double width = headWidth();
        var layer = sketch.notation();
        layer.add(Kind.HEAD, spot.owner(), new Shape.Sign(Glyph.HEAD_BLACK, new Point(x, y), scale));
        double stem = x + width - LINE;
        double tip = y - STEM_LENGTH;
        layer.add(Kind.STEM, spot.owner(), new Shape.Rect(new Box(stem, tip, stem + LINE, y - 0.1)));
        layer.add(Kind.FLAG, spot.owner(), new Shape.Sign(Glyph.FLAG_8_UP, new Point(stem, tip), scale));
        layer.add(
                Kind.FLAG,
                spot.owner(),
                new Shape.Stroke(new Point(stem - 0.5, tip + 1.5), new Point(stem + 0.8, tip + 0.5), LINE));
        ledgers(layer, spot, position, x, width);
        accidental(sketch, spot, grace, x, y);
    }

    static double headWidth() {
        return MusicFont.bravura().width(Glyph.HEAD_BLACK) * Measures.GRACE_SCALE;
    }

    /** Of a grace note's head. */
    static double left(Spot spot, int nth) {
        return spot.x() - Slurs.columnLeft(spot) + FROM_LEFT + nth * Columns.ANOTHER_GRACE;
    }

    /** The height of a grace note's head on the notation staff. */
    static double y(Spot spot, HeadPlace head) {
        return Measures.y(position(spot, head.head().grace().orElseThrow()));
    }

    private static void ledgers(Layer layer, Spot spot, int position, double x, double width) {
        for (int line = -2; line >= position; line -= 2) {
            layer.add(
                    Kind.LEDGER,
                    spot.owner(),
                    StaffLines.line(x - 0.25, x + width + 0.25, Measures.y(line), Measures.STAFF_LINE));
        }
        for (int line = 10; line <= position; line += 2) {
            layer.add(
                    Kind.LEDGER,
                    spot.owner(),
                    StaffLines.line(x - 0.25, x + width + 0.25, Measures.y(line), Measures.STAFF_LINE));
        }
    }

    private static void accidental(Sketch sketch, Spot spot, Grace grace, double x, double y) {
        grace.accidental().ifPresent(sign -> {
            var glyph = Accidentals.glyph(sign.sign());
            double left = x - 0.12 - MusicFont.bravura().width(glyph) * Measures.GRACE_SCALE;
            sketch.notation()
                    .add(
                            Kind.ACCIDENTAL,
                            spot.owner(),
                            new Shape.Sign(glyph, new Point(left, y), Measures.GRACE_SCALE));
        });
    }

    private static int position(Spot spot, Grace grace) {
        return Positions.sounding(grace.pitch()) - (spot.column().raised() ? Positions.OCTAVE : 0);
    }
}
