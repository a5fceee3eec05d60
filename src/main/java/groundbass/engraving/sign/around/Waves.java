package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.staff.TabNumbers;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.score.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Waves as long as their notes, ties and all (rule: vibrato-wave, trill-sign). */
final class Waves {
    private static final double BEFORE_NEXT = 0.6;
    private static final double BEFORE_BARLINE = 0.3;

    private final Sketch sketch;
    private final Predicate<Note> waved;

    /** @param waved which notes have one */
    Waves(Sketch sketch, Predicate<Note> waved) {
        this.sketch = sketch;
        this.waved = waved;
    }

    /** On its first head, or where it enters a system. */
    boolean begins(Spot spot) {
        return spot.cell().heads().stream()
                .anyMatch(head -> waved.test(head.head().note())
                        && (!head.head().tiedFrom() || TabNumbers.isEntering(spot, head.head())));
    }

    static boolean isLower(Spot spot) {
        return spot.cell().voices() > 1 && spot.cell().voice() == 1;
    }

    /** The last head of the note on this system. */
    private int last(int index) {
        var spots = sketch.spots();
        int last = index;
        for (int i = index + 1; i < spots.size(); i++) {
            boolean goesOn = spots.get(i).cell().heads().stream()
                    .anyMatch(head ->
                            head.head().tiedFrom() && waved.test(head.head().note()));
            boolean sameVoice =
                    spots.get(i).cell().voice() == spots.get(index).cell().voice();
            last = goesOn && sameVoice ? i : last;
            if (sameVoice && !goesOn) {
                return last;
            }
        }
        return last;
    }

    /** Where the next thing of its voice begins. */
    private double end(int last) {
        var spot = sketch.spots().get(last);
        return sketch.spots().stream()
                .skip(last + 1L)
                .filter(next -> next.x() > spot.x()
                        && next.cell().voice() == spot.cell().voice())
                .mapToDouble(Spot::x)
                .findFirst()
                .orElse(spot.span().end());
    }

    /**
     * Strokes on a baseline, before the barline behind the note's last head.
     *
     * @param index of the spot where it begins
     * @param from how far behind that the first stroke stands
     * @param fewest strokes, where there is little room
     */
    List<Shape> shapes(int index, Glyph glyph, double from, int fewest) {
        var spot = sketch.spots().get(index);
        int last = last(index);
        double step = MusicFont.bravura().width(glyph);
        double limit = sketch.spots().get(last).span().end() - BEFORE_BARLINE;
        double right = Math.min(end(last) - BEFORE_NEXT, limit);
        int count = Math.max(fewest, (int) ((right - spot.x() - from) / step));
        double left = Math.min(spot.x() + from, limit - count * step);
        var shapes = new ArrayList<Shape>();
        for (int i = 0; i < count; i++) {
            shapes.add(new Shape.Sign(glyph, new Point(left + i * step, 0), 1));
        }
        return shapes;
    }
}
