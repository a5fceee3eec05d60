package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.BarSpan;
import groundbass.writing.BeamGroup;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Beams, and with them how long the stems under them are (rule: beam-stack, beamed-stem-minimum). */
public final class Beams implements Concern {
    private static final double STUB = 1.1;
    private static final double FARTHEST = 6;
    private static final Set<Kind> UNDER =
            EnumSet.of(Kind.ACCIDENTAL, Kind.FLAG, Kind.PARENTHESIS, Kind.HEAD, Kind.DOT);

    @Override
    public void draw(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            if (span.bar().simile()) {
                continue;
            }
            var voices = sketch.written(span).voices();
            for (int voice = 0; voice < voices.size(); voice++) {
                for (var group : voices.get(voice).beams()) {
                    draw(sketch, group, under(sketch, span, voice, group));
                }
            }
        }
    }

    /** The chords under a beam; the rests it covers have no stem. */
    private static List<Spot> under(Sketch sketch, BarSpan span, int voice, BeamGroup group) {
        return sketch.spots().stream()
                .filter(spot -> spot.span() == span && spot.cell().voice() == voice)
                .filter(spot ->
                        spot.cell().index() >= group.first() && spot.cell().index() <= group.last())
                .filter(spot -> !spot.cell().isRest())
                .toList();
    }

    private static void draw(Sketch sketch, BeamGroup group, List<Spot> spots) {
        if (spots.size() < 2) {
            return;
        }
        boolean up = spots.get(0).cell().up();
        int most = group.parts().stream().mapToInt(List::size).max().orElse(1);
        var stems = spots.stream()
                .map(spot -> new BeamSlope.Stem(spot.stemLeft(), spot.outerPosition(), spot.innerPosition()))
                .toList();
        double[] ends = new BeamSlope(up, most, stems, limits(sketch, stems, up)).ends();
        double left = stems.get(0).x();
        double right = stems.get(stems.size() - 1).x() + Measures.STEM;
        var edge = new Edge(left, ends[0], right, ends[1], up);
        spots.forEach(spot -> sketch.tip(spot, edge.y(spot.stemLeft() + Measures.STEM / 2)));
        for (int level = 0; level < most; level++) {
            level(sketch, group, spots, edge, level);
        }
    }

    /** Signs, heads and grace notes under a beam that stand no farther out than its own notes by much. */
    private static List<BeamSlope.Limit> limits(Sketch sketch, List<BeamSlope.Stem> stems, boolean up) {
        double left = stems.get(0).x();
        double right = stems.get(stems.size() - 1).x() + Measures.STEM;
        var heads = stems.stream().mapToDouble(stem -> Measures.y(stem.outer()));
        double outermost =
                up ? heads.min().orElseThrow() - FARTHEST : heads.max().orElseThrow() + FARTHEST;
        var limits = new ArrayList<BeamSlope.Limit>();
        for (var mark : sketch.notation().marks()) {
            var box = mark.box();
            double y = up ? box.top() : box.bottom();
            boolean near = up ? y > outermost : y < outermost;
            if (near && UNDER.contains(mark.kind()) && box.right() > left && box.left() < right) {
                limits.add(new BeamSlope.Limit(Math.max(left, box.left()), y));
                limits.add(new BeamSlope.Limit(Math.min(right, box.right()), y));
            }
        }
        return limits;
    }

    /** The far edge of the outermost beam. */
    private record Edge(double left, double leftY, double right, double rightY, boolean up) {
        double y(double x) {
            return leftY + (rightY - leftY) * (x - left) / (right - left);
        }

        Shape beam(double from, double to, int level) {
            double inward = up ? 1 : -1;
            double offset = inward * level * (Measures.BEAM + Measures.BEAM_GAP);
            double thick = inward * Measures.BEAM;
            return new Shape.Polygon(List.of(
                    new Point(from, y(from) + offset),
                    new Point(to, y(to) + offset),
                    new Point(to, y(to) + offset + thick),
                    new Point(from, y(from) + offset + thick)));
        }
    }

    private static void level(Sketch sketch, BeamGroup group, List<Spot> spots, Edge edge, int level) {
        Spot begun = spots.get(0);
        for (var spot : spots) {
            var parts = group.parts().get(spot.cell().index() - group.first());
            if (parts.size() <= level) {
                continue;
            }
            double x = spot.stemLeft();
            switch (parts.get(level)) {
                case BEGIN -> begun = spot;
                case CONTINUE -> {}
                case END -> beam(sketch, spot, edge.beam(begun.stemLeft(), x + Measures.STEM, level));
                case FORWARD_HOOK -> beam(sketch, spot, edge.beam(x, x + STUB, level));
                case BACKWARD_HOOK -> beam(sketch, spot, edge.beam(x + Measures.STEM - STUB, x + Measures.STEM, level));
            }
        }
    }

    private static void beam(Sketch sketch, Spot spot, Shape shape) {
        sketch.notation().add(Kind.BEAM, spot.owner(), shape);
    }
}
