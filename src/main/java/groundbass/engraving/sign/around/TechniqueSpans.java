package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.options.TechniqueLetters.Letter.Spanned;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.TechniqueMarks;
import groundbass.score.Passage;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Techniques that last, such as the palm mute: words and a dashed line over their notes. */
final class TechniqueSpans {
    private static final double FROM_BARLINE = 0.3;
    private static final double CLEAR = 0.1;

    private final Map<Spanned, Held> open = new LinkedHashMap<>();
    private final Row row = new Row(0.2);

    /** @param string the one that was struck last */
    private record Held(Passage owner, double left, double right, int string, int way) {
        Held until(double newRight, int newString) {
            int newWay = newString == string ? way : Integer.signum(newString - string);
            return new Held(owner, left, newRight, newString, newWay);
        }

        /** A rake crosses the strings one way; where it comes back, another begins (rule: rake-one-way). */
        boolean isCrossedBy(int newString) {
            return newString != string && (way == 0 || way == Integer.signum(newString - string));
        }
    }

    private TechniqueSpans() {}

    static Row of(Sketch sketch) {
        var spans = new TechniqueSpans();
        spans.over(sketch);
        return spans.row;
    }

    private void over(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            if (span.bar().simile()) {
                close(sketch, Set.of());
                continue;
            }
            for (var mark : sketch.techniques(span)) {
                close(sketch, mark.held());
                double left = span.x(mark.owner().from().at());
                if (mark.signs().contains(Sign.RAKE)) {
                    open.entrySet().stream()
                            .filter(each -> !each.getValue().isCrossedBy(mark.string()))
                            .map(Map.Entry::getKey)
                            .toList()
                            .forEach(letter -> end(sketch, letter));
                }
                for (var letter : mark.held()) {
                    double start = Math.min(left, span.end() - FROM_BARLINE - TechniqueMarks.width(letter));
                    var held = open.getOrDefault(letter, new Held(mark.owner(), start, left, mark.string(), 0));
                    open.put(letter, held.until(left + Measures.HEAD_WIDTH, mark.string()));
                }
            }
        }
        close(sketch, Set.of());
    }

    /** Whether a barline that runs through both staves stands there, where a line leaves a gap. */
    static boolean onBarline(Sketch sketch, Box box) {
        return sketch.plan().bars().stream()
                .anyMatch(span -> isWithin(box, span.end(), span.right())
                        || isWithin(box, span.left(), span.start() - Measures.REPEAT_DOT));
    }

    private static boolean isWithin(Box box, double left, double right) {
        return box.right() > left - CLEAR && box.left() < right + CLEAR;
    }

    /** All that are not held any longer. */
    private void close(Sketch sketch, Set<Spanned> held) {
        for (var letter : List.copyOf(open.keySet())) {
            if (!held.contains(letter)) {
                end(sketch, letter);
            }
        }
    }

    private void end(Sketch sketch, Spanned letter) {
        var ended = open.remove(letter);
        double room = sketch.plan().width() - TechniqueMarks.width(letter);
        double left = Math.max(0, Math.min(ended.left(), room));
        var shapes = Dashes.shapes(letter.text(), Face.BOLD, TechniqueMarks.SIZE, left, ended.right());
        var clear = shapes.stream()
                .filter(shape -> shape instanceof Shape.Run || !onBarline(sketch, shape.box()))
                .toList();
        row.add(Kind.TECHNIQUE, Optional.of(ended.owner()), clear);
    }
}
