package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.options.Sign;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Arrival;
import groundbass.score.Passage;

/**
 * The letters of slurs, clear of them all: on a notation staff alone each at its slur, on the tablature in a row that
 * {@link groundbass.engraving.sign.around.LetterRows} places.
 */
public final class SlurLetters implements Concern {
    private static final double SIZE = 1.75;
    private static final double CLEAR = 0.3;
    private static final double FROM_BARLINE = 0.25;

    @Override
    public void draw(Sketch sketch) {
        if (!sketch.options().staves().hasTab()) {
            sketch.slurLetters(true).placeEachAbove(sketch.notation(), CLEAR);
            sketch.slurLetters(false).placeEachBelow(sketch.notation(), CLEAR);
        }
    }

    /** Puts a letter beside the middle of a slur, where the technique has one, and clear of bar lines. */
    static void add(Sketch sketch, Arrival.Kind kind, Passage owner, double middle, boolean above) {
        String letter = sketch.options().letters().of(kind);
        if (!letter.isEmpty()) {
            sketch.use(Sign.of(kind));
            double half = TextFont.of(Face.ITALIC).width(letter) * SIZE / 2;
            double x = sketch.options().staves() == Staves.BOTH ? besideBarlines(sketch, middle, half) : middle;
            var run = new Shape.Run(letter, Face.ITALIC, SIZE, new Point(x, 0), Align.MIDDLE);
            sketch.slurLetters(above).add(Kind.SLUR_LETTER, owner, run);
        }
    }

    /** Before or behind a bar line that runs through both staves, whichever is nearer. */
    private static double besideBarlines(Sketch sketch, double middle, double half) {
        double room = half + FROM_BARLINE;
        for (var span : sketch.plan().bars()) {
            boolean touches = middle + room > span.end() && middle - room < span.right();
            if (touches && !span.last()) {
                double before = span.end() - room;
                double behind = span.right() + room;
                return middle - before < behind - middle ? before : behind;
            }
        }
        return middle;
    }
}
