package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.TimeSignature;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.List;

/**
 * A thick bar between two posts for silent bars that follow one another, their number over it (rule: rests-together).
 */
public final class LongRestSigns implements Concern {
    /** rule: font-thickness: hBarThickness. */
    public static final double THICKNESS = 1.0;

    private static final double POST_HEIGHT = 2;
    private static final double FROM_BARLINE = 1.4;
    private static final double GAP = 0.6;

    @Override
    public void draw(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            int bars = span.bar().bars();
            if (bars > 1) {
                var owner = owner(span.bar().number(), bars);
                staves(sketch).forEach(layer -> sign(layer, span, owner));
                number(sketch.upper(), span, bars, owner);
            }
        }
    }

    private static Passage owner(int first, int bars) {
        return new Passage(new Position(first, Fraction.ZERO), new Position(first + bars, Fraction.ZERO));
    }

    private static List<Layer> staves(Sketch sketch) {
        return switch (sketch.options().staves()) {
            case BOTH -> List.of(sketch.notation(), sketch.tab());
            case TAB_ONLY -> List.of(sketch.tab());
            case NOTATION_ONLY -> List.of(sketch.notation());
        };
    }

    private static void sign(Layer layer, BarSpan span, Passage owner) {
        double left = span.start() + FROM_BARLINE;
        double right = span.end() - FROM_BARLINE;
        double middle = layer.height() / 2;
        double post = Measures.THIN_BARLINE;
        layer.add(
                Kind.REST, owner, new Shape.Rect(new Box(left, middle - THICKNESS / 2, right, middle + THICKNESS / 2)));
        for (double x : new double[] {left - post / 2, right - post / 2}) {
            var box = new Box(x, middle - POST_HEIGHT / 2, x + post, middle + POST_HEIGHT / 2);
            layer.add(Kind.REST, owner, new Shape.Rect(box));
        }
    }

    private static void number(Layer layer, BarSpan span, int bars, Passage owner) {
        double width = TimeSignature.width(Integer.toString(bars));
        double left = (span.start() + span.end() - width) / 2;
        double middle = layer.top(left, left + width) - GAP - 1;
        TimeSignature.figures(Integer.toString(bars), left, middle)
                .forEach(shape -> layer.add(Kind.REST, owner, shape));
    }
}
