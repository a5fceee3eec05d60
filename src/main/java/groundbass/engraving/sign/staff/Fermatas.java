package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Ornaments.Mark;

/** Fermatas at the end of their sound: above the staff, of the lower of two voices below it. */
public final class Fermatas implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            boolean ends = spot.cell().heads().stream()
                    .anyMatch(
                            head -> !head.head().tiedTo() && head.head().note().has(Mark.FERMATA));
            if (ends) {
                sketch.use(Sign.FERMATA);
                Articulations.outside(
                        sketch.upper(), spot, spot.cell().voice() == 0, Glyph.FERMATA, Glyph.FERMATA_BELOW);
            }
        }
    }
}
