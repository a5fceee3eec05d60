package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.theory.Key;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Trills: their letters and a wave as long as the note, over the staff, or under it for the lower of two voices
 * (rule: trill-sign). The upper note stands in brackets on the tablature; over the letters stands its accidental, where
 * it is not the key's.
 */
public final class Trills implements Concern {
    private static final double GAP = 0.5;
    private static final double BETWEEN = 0.25;
    private static final double SIGN_SCALE = 0.66;
    private static final double SIGN_GAP = 0.25;

    @Override
    public void draw(Sketch sketch) {
        var over = new Row(BETWEEN);
        var under = new Row(BETWEEN);
        var waves = new Waves(sketch, note -> note.ornaments().trill().isPresent());
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            if (waves.begins(spot)) {
                sketch.use(Sign.TRILL);
                (Waves.isLower(spot) ? under : over)
                        .add(Kind.TRILL, Optional.of(spot.owner()), shapes(sketch, waves, spot, i));
            }
        }
        over.placeAbove(sketch.upper(), GAP);
        under.placeBelow(sketch.upper(), GAP);
    }

    private static List<Shape> shapes(Sketch sketch, Waves waves, Spot spot, int index) {
        var shapes = new ArrayList<Shape>();
        var begun = spot.cell().heads().stream()
                .map(head -> head.head())
                .filter(head ->
                        !head.tiedFrom() && head.note().ornaments().trill().isPresent())
                .findFirst();
        begun.ifPresent(head -> {
            shapes.add(new Shape.Sign(Glyph.TRILL, new Point(spot.x(), 0), 1));
            accidental(head, sketch.written(spot.span()).inForce().key())
                    .ifPresent(sign -> shapes.add(over(spot, sign)));
        });
        double from = begun.isPresent() ? MusicFont.bravura().width(Glyph.TRILL) + BETWEEN : 0;
        shapes.addAll(waves.shapes(index, Glyph.TRILL_WAVE, from, 0));
        return shapes;
    }

    private static Shape over(Spot spot, Glyph sign) {
        var letters = MusicFont.bravura().box(Glyph.TRILL);
        var box = MusicFont.bravura().box(sign);
        double x = spot.x() + (letters.right() - box.width() * SIGN_SCALE) / 2;
        double y = letters.top() - SIGN_GAP - box.bottom() * SIGN_SCALE;
        return new Shape.Sign(sign, new Point(x, y), SIGN_SCALE);
    }

    /** Of the note a step higher, where the key does not have it. */
    private static Optional<Glyph> accidental(Head head, Key key) {
        int midi = head.pitch().midi()
                + head.note().ornaments().trill().orElseThrow().frets();
        var letter = head.pitch().name().letter().plus(1);
        int alteration = Math.floorMod(midi - letter.semitones() + 6, 12) - 6;
        return alteration == key.alterationOf(letter) ? Optional.empty() : Optional.of(sign(alteration));
    }

    private static Glyph sign(int alteration) {
        return switch (alteration) {
            case -2 -> Glyph.DOUBLE_FLAT;
            case -1 -> Glyph.FLAT;
            case 1 -> Glyph.SHARP;
            case 2 -> Glyph.DOUBLE_SHARP;
            default -> Glyph.NATURAL;
        };
    }
}
