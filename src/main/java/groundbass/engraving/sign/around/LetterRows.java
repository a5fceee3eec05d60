package groundbass.engraving.sign.around;

import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import java.util.List;

/**
 * What both hands do, in letters: over the tablature those of slurs, those of the plucking hand and words with a dashed
 * line stand on one baseline, or where they would touch in rows in this order (rule: technique-row).
 */
public final class LetterRows implements Concern {
    private static final double GAP = 0.45;

    @Override
    public void draw(Sketch sketch) {
        var letters = TechniqueRow.of(sketch);
        var spans = TechniqueSpans.of(sketch);
        if (sketch.options().staves().hasTab()) {
            Row.placeTogetherAbove(sketch.tab(), GAP, List.of(sketch.slurLetters(true), letters, spans));
        } else {
            letters.placeBelow(sketch.notation(), GAP);
            spans.placeBelow(sketch.notation(), GAP);
        }
    }
}
