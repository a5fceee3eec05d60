package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Stroke;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Repeats.Ending;
import java.util.ArrayList;
import java.util.Optional;

/**
 * Brackets over the bars of each ending; closed on the right but for the last (rule: ending-brackets). How often a
 * plain repeat is played, where that is not twice.
 */
public final class Endings implements Concern {
    private static final double GAP = 0.6;
    private static final double HEIGHT = 2.2;
    private static final double SIZE = 1.8;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(-0.5);
        var open = openAt(sketch, sketch.plan().firstIndex());
        double left = sketch.plan().bars().get(0).start();
        boolean begun = false;
        for (var span : sketch.plan().bars()) {
            var signs = sketch.written(span).bar().repeats();
            if (signs.ending().isPresent()) {
                open = signs.ending();
                left = span.first() ? span.start() : span.left();
                begun = true;
            }
            if (open.isPresent() && (signs.endingEnd() || span.last())) {
                boolean closed = signs.endingEnd() && signs.end().isPresent();
                row.add(Kind.ENDING, Optional.empty(), bracket(open.get(), left, span.right(), begun, closed));
                open = signs.endingEnd() ? Optional.empty() : open;
            }
        }
        row.placeAbove(sketch.upper(), GAP);
        times(sketch);
    }

    /** The bracket that an earlier system left open. */
    private static Optional<Ending> openAt(Sketch sketch, int first) {
        for (int i = first - 1; i >= 0; i--) {
            var signs = sketch.signs().bar(i).bar().repeats();
            if (signs.endingEnd()) {
                return Optional.empty();
            }
            if (signs.ending().isPresent()) {
                return signs.ending();
            }
        }
        return Optional.empty();
    }

    private static java.util.List<Shape> bracket(
            Ending ending, double left, double right, boolean begun, boolean closed) {
        double line = Measures.ENDING_LINE;
        double from = left + 0.2;
        double to = right - 0.2;
        var shapes = new ArrayList<Shape>();
        shapes.add(new Stroke(new Point(from, -HEIGHT), new Point(to, -HEIGHT), line));
        if (begun) {
            shapes.add(new Stroke(new Point(from, -HEIGHT), new Point(from, 0), line));
            var at = new Point(from + 0.5, -0.45);
            shapes.add(new Shape.Run(passes(ending), Face.MEDIUM, SIZE, at, Align.START));
        }
        if (closed) {
            shapes.add(new Stroke(new Point(to, -HEIGHT), new Point(to, 0), line));
        }
        return shapes;
    }

    /** Each pass as an ordinal: 1. or 1.–2. */
    private static String passes(Ending ending) {
        return ending.firstPass() == ending.lastPass()
                ? ending.firstPass() + "."
                : ending.firstPass() + ".–" + ending.lastPass() + ".";
    }

    private static void times(Sketch sketch) {
        var row = new Row(0.5);
        for (var span : sketch.plan().bars()) {
            sketch.written(span)
                    .bar()
                    .repeats()
                    .end()
                    .flatMap(end -> end.times())
                    .filter(times -> times != 2)
                    .ifPresent(times -> {
                        String words = sketch.options().words().times(times);
                        var at = new Point(span.right(), 0);
                        var run = new Shape.Run(words, Face.ITALIC, SIZE, at, Align.END);
                        row.add(Kind.ENDING, Optional.empty(), java.util.List.of(run));
                    });
        }
        row.placeEachAbove(sketch.upper(), GAP);
    }
}
