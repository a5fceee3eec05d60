package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Column;
import groundbass.score.Direction.Loudness;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Loudness and hairpins under the notation staff (under the tablature where there is no other), in one row. */
public final class Dynamics implements Concern {
    private static final double GAP = 0.5;
    private static final double CLEAR = 0.25;

    /** A dynamic's letters at a moment of a bar. */
    private record Letters(int bar, Fraction at, Passage owner, Shape shape) {}

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.3);
        var letters = letters(sketch);
        letters.forEach(each -> row.add(Kind.DYNAMIC, each.owner(), each.shape()));
        for (var reach : sketch.signs().hairpins()) {
            var hairpin = new HairpinShape(sketch, reach);
            if (hairpin.isHere()) {
                var before = at(letters, reach.bar(), reach.hairpin().at());
                var after = at(letters, reach.lastBar(), reach.end());
                row.add(
                        Kind.HAIRPIN,
                        Optional.of(hairpin.owner()),
                        hairpin.shapes(before.map(shape -> shape.box().right()), after.map(shape -> shape.box()
                                .left())));
            }
        }
        row.placeBelow(sketch.upper(), GAP);
    }

    private static List<Letters> letters(Sketch sketch) {
        var found = new ArrayList<Letters>();
        for (var span : sketch.plan().bars()) {
            for (var direction : sketch.written(span).bar().directions()) {
                if (direction instanceof Loudness loudness) {
                    found.add(letters(sketch, span, loudness));
                }
            }
        }
        return found;
    }

    private static Letters letters(Sketch sketch, BarSpan span, Loudness loudness) {
        var glyph = glyph(loudness.dynamic());
        var ink = MusicFont.bravura().box(glyph);
        double x = span.x(loudness.at()) + Column.MIDDLE - ink.middle();
        x = Math.max(x, span.left() + CLEAR - ink.left());
        x = Math.min(x, span.end() - CLEAR - ink.right());
        var from = new Position(span.bar().number(), loudness.at());
        var to = new Position(span.bar().number(), sketch.written(span).bar().to());
        var shape = new Shape.Sign(glyph, new Point(x, 0), 1);
        return new Letters(span.index(), loudness.at(), new Passage(from, to), shape);
    }

    private static Optional<Shape> at(List<Letters> letters, int bar, Fraction at) {
        return letters.stream()
                .filter(each -> each.bar() == bar && each.at().equals(at))
                .map(Letters::shape)
                .findFirst();
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
