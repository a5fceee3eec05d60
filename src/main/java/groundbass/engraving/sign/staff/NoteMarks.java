package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Rect;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Accidentals;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Heads;
import groundbass.writing.Head;

/** Heads with their ledger lines, dots, accidentals and parentheses. */
public final class NoteMarks implements Concern {
    private static final double PARENTHESIS_GAP = 0.06;

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            spot.cell().heads().forEach(head -> head(sketch, spot, head));
            ledgers(sketch, spot);
            for (var dot : spot.cell().dots()) {
                if (!spot.cell().isRest()) {
                    sketch.notation().add(Kind.DOT, spot.owner(), dot(spot, dot));
                }
            }
        }
        for (var span : sketch.plan().bars()) {
            for (int i = 0; i < span.columns().length; i++) {
                double x = span.columns()[i];
                span.bar().columns().get(i).accidentals().forEach(each -> accidental(sketch, x, each));
            }
        }
    }

    /** What the shape of a head, and its number on a string, says of the note. */
    static void use(Sketch sketch, Head head) {
        if (head.note().isDead()) {
            sketch.use(Sign.DEAD);
        }
        if (head.note().ornaments().harmonic().isPresent()) {
            sketch.use(Sign.HARMONIC);
        }
        if (Heads.isGhost(head)) {
            sketch.use(Sign.GHOST);
        }
    }

    static Shape dot(Spot spot, Cell.DotPlace dot) {
        return new Shape.Sign(Glyph.DOT, new Point(spot.x() + dot.dx(), Measures.y(dot.position())), 1);
    }

    private static void head(Sketch sketch, Spot spot, HeadPlace head) {
        double x = spot.x() + head.dx();
        var layer = sketch.notation();
        layer.add(Kind.HEAD, spot.owner(), new Shape.Sign(head.glyph(), new Point(x, head.y()), 1));
        use(sketch, head.head());
        if (Heads.isGhost(head.head())) {
            var left = MusicFont.bravura().box(Glyph.PARENTHESIS_LEFT);
            var right = MusicFont.bravura().box(Glyph.PARENTHESIS_RIGHT);
            var edges = edges(spot, head);
            parenthesis(layer, spot, Glyph.PARENTHESIS_LEFT, edges.left() - PARENTHESIS_GAP - left.right(), head.y());
            parenthesis(layer, spot, Glyph.PARENTHESIS_RIGHT, edges.right() + PARENTHESIS_GAP - right.left(), head.y());
        }
    }

    /** From the left to the right edge of the head and of those beside it, which parentheses must not cut. */
    private static Box edges(Spot spot, HeadPlace head) {
        double left = head.dx();
        double right = head.right();
        for (var other : spot.cell().heads()) {
            if (Math.abs(other.position() - head.position()) <= 2) {
                left = Math.min(left, other.dx());
                right = Math.max(right, other.right());
            }
        }
        return new Box(spot.x() + left, head.y(), spot.x() + right, head.y());
    }

    private static void parenthesis(Layer layer, Spot spot, Glyph glyph, double x, double y) {
        layer.add(Kind.PARENTHESIS, spot.owner(), new Shape.Sign(glyph, new Point(x, y), 1));
    }

    /** Ledger lines of one chord, each once and as wide as the widest head that needs it. */
    private static void ledgers(Sketch sketch, Spot spot) {
        if (spot.cell().isRest()) {
            return;
        }
        for (int position = -2; position >= spot.cell().lowest(); position -= 2) {
            ledger(sketch, spot, position);
        }
        for (int position = 10; position <= spot.cell().highest(); position += 2) {
            ledger(sketch, spot, position);
        }
    }

    private static void ledger(Sketch sketch, Spot spot, int position) {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (var head : spot.cell().heads()) {
            if (position < 0 ? head.position() <= position : head.position() >= position) {
                left = Math.min(left, head.dx());
                right = Math.max(right, head.right());
            }
        }
        double y = Measures.y(position);
        double reach = Measures.LEDGER_REACH;
        sketch.notation()
                .add(
                        Kind.LEDGER,
                        spot.owner(),
                        new Rect(new Box(
                                spot.x() + left - reach,
                                y - Measures.LEDGER / 2,
                                spot.x() + right + reach,
                                y + Measures.LEDGER / 2)));
    }

    private static void accidental(Sketch sketch, double column, Accidentals.Place place) {
        double x = column + place.dx();
        double y = Measures.y(place.position());
        var layer = sketch.notation();
        layer.add(Kind.ACCIDENTAL, place.owner(), new Shape.Sign(place.glyph(), new Point(x, y), 1));
        if (place.courtesy()) {
            var box = MusicFont.bravura().box(place.glyph());
            var left = MusicFont.bravura().box(Glyph.ACCIDENTAL_PARENTHESIS_LEFT);
            layer.add(
                    Kind.ACCIDENTAL,
                    place.owner(),
                    new Shape.Sign(Glyph.ACCIDENTAL_PARENTHESIS_LEFT, new Point(x + box.left() - left.right(), y), 1));
            layer.add(
                    Kind.ACCIDENTAL,
                    place.owner(),
                    new Shape.Sign(Glyph.ACCIDENTAL_PARENTHESIS_RIGHT, new Point(x + box.right(), y), 1));
        }
    }
}
