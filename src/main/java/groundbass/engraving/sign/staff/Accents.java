package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Ornaments.Mark;

/** Accents outside the staff and beyond the curves, on the heads' side; strong ones over the staff. */
public final class Accents implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            if (Articulations.begins(spot, Mark.ACCENT)) {
                sketch.use(Sign.ACCENT);
                boolean above = sketch.options().staves().hasNotation() ? Articulations.onHeadSideAbove(spot) : true;
                Articulations.outside(sketch.upper(), spot, above, Glyph.ACCENT_ABOVE, Glyph.ACCENT_BELOW);
            }
            if (Articulations.begins(spot, Mark.MARCATO)) {
                sketch.use(Sign.MARCATO);
                boolean above = spot.cell().voices() < 2 || spot.cell().voice() == 0;
                Articulations.outside(sketch.upper(), spot, above, Glyph.MARCATO_ABOVE, Glyph.MARCATO_BELOW);
            }
        }
    }
}
