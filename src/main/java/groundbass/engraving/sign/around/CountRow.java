package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Column;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** How the bars are counted, under the last staff (rule: counts-row). */
public final class CountRow implements Concern {
    private static final double SIZE = 1.5;
    private static final double GAP = 0.8;

    /** What must be free beside a number in brackets; beside a struck count its column keeps the room. */
    private static final double BESIDE = 0.25;

    /** For a moment inside a tuplet, for which nobody has a word. */
    private static final String NO_WORD = "\u00b7";

    @Override
    public void draw(Sketch sketch) {
        if (!sketch.options().aids().counts()) {
            return;
        }
        var row = new Row(0);
        for (var span : sketch.plan().bars()) {
            if (!span.bar().simile() && span.bar().bars() == 1) {
                of(span).forEach(count -> row.add(Kind.COUNT, Optional.empty(), List.of(count)));
            }
        }
        row.placeBelow(sketch.lower(), GAP);
    }

    private static List<Shape.Run> of(BarSpan span) {
        var counts = new ArrayList<Shape.Run>();
        var struck = new ArrayList<Fraction>();
        var columns = span.bar().columns();
        var meter = span.bar().written().inForce().meter();
        for (int i = 0; i < columns.size(); i++) {
            if (isStruck(columns.get(i))) {
                struck.add(columns.get(i).onset());
                counts.add(run(syllable(columns.get(i).onset(), meter), span.columns()[i] + Column.MIDDLE));
            }
        }
        if (!struck.isEmpty()) {
            waited(span, meter, struck).forEach(run -> addWhereFree(counts, run, span));
        }
        return counts;
    }

    private static boolean isStruck(Column column) {
        return column.cells().stream().flatMap(cell -> cell.heads().stream()).anyMatch(head -> !head.head()
                .tiedFrom());
    }

    /** The count as it is said: a number on the count, elsewhere its syllable alone. */
    private static String syllable(Fraction onset, Meter meter) {
        return Count.at(onset, meter)
                .map(count -> count.quarter() == 0 ? count.toString() : count.syllable())
                .orElse(NO_WORD);
    }

    /** The numbers at which nothing is struck, in brackets. */
    private static List<Shape.Run> waited(BarSpan span, Meter meter, List<Fraction> struck) {
        var bar = span.bar().written().bar();
        return IntStream.range(0, meter.counts())
                .mapToObj(count -> new Count(count + 1, 0))
                .filter(count -> {
                    var at = count.offset(meter);
                    return !at.isBefore(bar.from()) && at.isBefore(bar.to()) && !struck.contains(at);
                })
                .map(count -> run("(" + count + ")", span.x(count.offset(meter)) + Column.MIDDLE))
                .toList();
    }

    private static void addWhereFree(List<Shape.Run> counts, Shape.Run run, BarSpan span) {
        Box box = run.box();
        boolean free = box.right() + BESIDE < span.end()
                && counts.stream()
                        .map(Shape.Run::box)
                        .noneMatch(other -> box.left() - BESIDE < other.right() && other.left() < box.right() + BESIDE);
        if (free) {
            counts.add(run);
        }
    }

    private static Shape.Run run(String text, double middle) {
        return new Shape.Run(text, Face.REGULAR, SIZE, new Point(middle, 0), Align.MIDDLE).inPale();
    }
}
