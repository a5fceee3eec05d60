package groundbass.engraving;

import groundbass.score.Arrival;
import groundbass.score.Passage;

/** The letters of slurs, clear of them all: in a row on the tablature, on a notation staff alone each at its slur. */
final class SlurLetters implements Concern {
    private static final double SIZE = 1.5;
    private static final double CLEAR = 0.3;

    @Override
    public void draw(Sketch sketch) {
        if (sketch.options().staves().hasTab()) {
            sketch.slurLetters(true).placeAbove(sketch.tab(), CLEAR);
        } else {
            sketch.slurLetters(true).placeEachAbove(sketch.notation(), CLEAR);
            sketch.slurLetters(false).placeEachBelow(sketch.notation(), CLEAR);
        }
    }

    /** Puts a letter beside the middle of a slur, where the technique has one. */
    static void add(
            Sketch sketch, Arrival.Kind kind, Passage owner, double middle, boolean above) {
        String letter = sketch.options().letters().of(kind);
        if (!letter.isEmpty()) {
            sketch.use(Sign.of(kind));
            var run = new Shape.Run(letter, Face.ITALIC, SIZE, new Point(middle, 0), Align.MIDDLE);
            sketch.slurLetters(above).add(Kind.SLUR_LETTER, owner, run);
        }
    }
}
