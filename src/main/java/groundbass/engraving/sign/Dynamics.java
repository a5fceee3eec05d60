package groundbass.engraving.sign;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.Column;
import groundbass.score.Direction.Loudness;
import groundbass.score.Dynamic;
import groundbass.score.Passage;
import groundbass.score.Position;

/** Loudness under the notation staff (under the tablature where there is no other), in one row. */
final class Dynamics implements Concern {
    private static final double GAP = 0.5;
    private static final double CLEAR = 0.25;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.3);
        for (var span : sketch.plan().bars()) {
            var bar = sketch.written(span).bar();
            for (var direction : bar.directions()) {
                if (direction instanceof Loudness loudness) {
                    var glyph = glyph(loudness.dynamic());
                    var ink = MusicFont.bravura().box(glyph);
                    double x = span.x(loudness.at()) + Column.MIDDLE - ink.middle();
                    x = Math.max(x, span.left() + CLEAR - ink.left());
                    x = Math.min(x, span.end() - CLEAR - ink.right());
                    var from = new Position(span.bar().number(), loudness.at());
                    var owner = new Passage(from, new Position(span.bar().number(), bar.to()));
                    row.add(Kind.DYNAMIC, owner, new Shape.Sign(glyph, new Point(x, 0), 1));
                }
            }
        }
        row.placeBelow(sketch.upper(), GAP);
    }

    private static Glyph glyph(Dynamic dynamic) {
        return switch (dynamic) {
            case PP -> Glyph.PP;
            case P -> Glyph.P;
            case MP -> Glyph.MP;
            case MF -> Glyph.MF;
            case F -> Glyph.F;
            case FF -> Glyph.FF;
        };
    }
}
