package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.Column;
import groundbass.engraving.spacing.TechniqueMarks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The plucking hand's letters and strokes, each centred under its note. */
final class TechniqueRow {
    private TechniqueRow() {}

    static Row of(Sketch sketch) {
        var row = new Row(0.1);
        for (var span : sketch.plan().bars()) {
            if (span.bar().simile()) {
                continue;
            }
            for (var mark : sketch.techniques(span)) {
                if (mark.letters().isEmpty()) {
                    mark.signs().forEach(sketch::use);
                    continue;
                }
                double middle = span.x(mark.owner().from().at()) + Column.MIDDLE;
                row.add(Kind.TECHNIQUE, Optional.of(mark.owner()), shapes(mark, middle - mark.width() / 2));
                mark.signs().forEach(sketch::use);
            }
        }
        return row;
    }

    private static List<Shape> shapes(TechniqueMarks.At mark, double left) {
        var shapes = new ArrayList<Shape>();
        double x = left;
        for (var letter : mark.letters()) {
            for (var shape : TechniqueMarks.shapes(letter)) {
                shapes.add(shape.moved(x, 0));
            }
            x += TechniqueMarks.width(letter) + TechniqueMarks.BETWEEN;
        }
        return shapes;
    }
}
