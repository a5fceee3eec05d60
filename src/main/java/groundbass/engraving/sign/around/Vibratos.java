package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Ornaments.Mark;
import java.util.List;
import java.util.Optional;

/**
 * Vibrato as a wave as long as its note, ties and all, over both staves (rule: vibrato-wave); the lower of two voices has its
 * wave over the tablature only, or under a staff alone.
 */
public final class Vibratos implements Concern {
    private static final double GAP = 0.4;
    private static final int FEWEST_STROKES = 2;

    @Override
    public void draw(Sketch sketch) {
        var over = new Row(0.2);
        var under = new Row(0.2);
        var between = new Row(0.2);
        var waves = new Waves(sketch, note -> note.has(Mark.VIBRATO));
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            if (waves.begins(spot)) {
                sketch.use(Sign.VIBRATO);
                var wave = waves.shapes(i, Glyph.VIBRATO, 0, FEWEST_STROKES);
                (Waves.isLower(spot) ? under : over).add(Kind.VIBRATO, Optional.of(spot.owner()), wave);
                between.add(Kind.VIBRATO, Optional.of(spot.owner()), withoutBarlines(sketch, wave));
            }
        }
        over.placeAbove(sketch.upper(), GAP);
        if (sketch.options().staves() == Staves.BOTH) {
            between.placeAbove(sketch.tab(), GAP);
        } else {
            under.placeBelow(sketch.upper(), GAP);
        }
    }

    private static List<Shape> withoutBarlines(Sketch sketch, List<Shape> wave) {
        return wave.stream()
                .filter(shape -> !TechniqueSpans.onBarline(sketch, shape.box()))
                .toList();
    }
}
