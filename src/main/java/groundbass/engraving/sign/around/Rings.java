package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.score.Ornaments.Mark;
import java.util.Optional;

/** Words and a dashed line over notes that ring on, one after the other. */
public final class Rings implements Concern {
    private static final double GAP = 0.4;
    private static final double SIZE = 1.6;

    private final Row row = new Row(0.2);
    private Optional<Spot> first = Optional.empty();
    private double right;

    @Override
    public void draw(Sketch sketch) {
        new Rings().over(sketch);
    }

    private void over(Sketch sketch) {
        var spots = sketch.spots();
        for (int i = 0; i < spots.size(); i++) {
            var spot = spots.get(i);
            boolean rings = rings(spot)
                    || (i > 0 && spots.get(i - 1).x() == spot.x() && rings(spots.get(i - 1)))
                    || (i + 1 < spots.size() && spots.get(i + 1).x() == spot.x() && rings(spots.get(i + 1)));
            if (rings) {
                first = first.or(() -> Optional.of(spot));
                right = spot.x() + Measures.HEAD_WIDTH;
            } else if (begins(spot)) {
                close(sketch);
            }
        }
        close(sketch);
        row.placeAbove(sketch.upper(), GAP);
    }

    private static boolean rings(Spot spot) {
        return spot.cell().heads().stream().anyMatch(head -> head.head().note().has(Mark.RING));
    }

    private static boolean begins(Spot spot) {
        return spot.cell().heads().stream().anyMatch(head -> !head.head().tiedFrom());
    }

    private void close(Sketch sketch) {
        first.ifPresent(spot -> {
            sketch.use(Sign.RING);
            String words = sketch.options().words().ring();
            double width = TextFont.of(Face.ITALIC).width(words) * SIZE;
            double left = Math.max(0, Math.min(spot.x(), sketch.plan().width() - width));
            row.add(Kind.RING, Optional.of(spot.owner()), Dashes.shapes(words, Face.ITALIC, SIZE, left, right));
        });
        first = Optional.empty();
    }
}
