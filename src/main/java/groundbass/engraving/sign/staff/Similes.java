package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Passage;

/** The sign for "as the bar before", in the middle of an otherwise empty bar, on both staves. */
public final class Similes implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            if (span.bar().simile()) {
                var owner = Passage.bar(span.bar().number());
                if (sketch.options().staves().hasNotation()) {
                    sign(sketch.notation(), owner, span.middle());
                }
                if (sketch.options().staves().hasTab()) {
                    sign(sketch.tab(), owner, span.middle());
                }
            }
        }
    }

    private static void sign(Layer layer, Passage owner, double middle) {
        var box = MusicFont.bravura().box(Glyph.REPEAT_BAR);
        var at = new Point(middle - box.middle(), layer.height() / 2);
        layer.add(Kind.SIMILE, owner, new Shape.Sign(Glyph.REPEAT_BAR, at, 1));
    }
}
