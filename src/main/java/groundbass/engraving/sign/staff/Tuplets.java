package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Stroke;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.BarSpan;
import groundbass.writing.BeamGroup;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import java.util.ArrayList;
import java.util.List;

/**
 * Tuplet figures on the stems' side, with a bracket unless a beam covers exactly the tuplet (rule:
 * tuplet-without-bracket, tuplet-bracket).
 */
public final class Tuplets implements Concern {
    private static final double SCALE = 0.85;
    private static final double HOOK = 0.75;
    private static final double GAP = 0.45;
    private static final double NARROWEST = 2.6;
    private static final double FROM_BARLINE = 0.3;
    private static final double AROUND_FIGURE = 0.3;

    @Override
    public void draw(Sketch sketch) {
        if (!sketch.options().staves().hasNotation()) {
            return;
        }
        for (var span : sketch.plan().bars()) {
            if (!span.bar().simile()) {
                var voices = sketch.written(span).voices();
                for (int voice = 0; voice < voices.size(); voice++) {
                    for (var tuplet : voices.get(voice).tuplets()) {
                        draw(sketch, span, voices.get(voice), voice, tuplet);
                    }
                }
            }
        }
    }

    private static void draw(Sketch sketch, BarSpan span, Voice voice, int number, TupletGroup tuplet) {
        var spots = sketch.spots().stream()
                .filter(spot -> spot.span() == span && spot.cell().voice() == number)
                .filter(spot ->
                        spot.cell().index() >= tuplet.first() && spot.cell().index() <= tuplet.last())
                .toList();
        if (spots.isEmpty()) {
            return;
        }
        boolean above = spots.stream()
                        .filter(spot -> !spot.cell().isRest())
                        .mapToInt(spot -> spot.cell().up() ? 1 : -1)
                        .sum()
                >= 0;
        boolean bare = voice.beams().stream().anyMatch(beam -> covers(beam, tuplet));
        double left = bare ? stem(spots.get(0)) : spots.get(0).x() - 0.1;
        double right = bare
                ? stem(spots.get(spots.size() - 1))
                : spots.get(spots.size() - 1).x() + Measures.HEAD_WIDTH + 0.1;
        if (!bare && right - left < NARROWEST) {
            left = Math.min(left, span.end() - NARROWEST - FROM_BARLINE);
            right = left + NARROWEST;
        }
        var figures = figures(tuplet, (left + right) / 2);
        var layer = sketch.notation();
        var owner = spots.get(0).owner();
        if (bare) {
            var box = box(figures);
            double y = above
                    ? layer.top(box.left(), box.right()) - GAP
                    : layer.bottom(box.left(), box.right()) + GAP + box.height();
            figures.forEach(figure -> layer.add(Kind.TUPLET, owner, figure.moved(0, y)));
            return;
        }
        double edge = above
                ? layer.top(left - GAP, right + GAP) - GAP - HOOK
                : layer.bottom(left - GAP, right + GAP) + GAP + HOOK;
        var shapes = new ArrayList<Shape>();
        figures.forEach(figure -> shapes.add(figure.moved(0, edge + box(figures).height() / 2)));
        bracket(shapes, left, right, box(figures), edge, above ? HOOK : -HOOK);
        shapes.forEach(shape -> layer.add(Kind.TUPLET, owner, shape));
    }

    private static double stem(Spot spot) {
        return spot.stemLeft();
    }

    static boolean covers(BeamGroup beam, TupletGroup tuplet) {
        return beam.first() == tuplet.first() && beam.last() == tuplet.last();
    }

    /** A line with hooks at its ends, open around the figures. */
    public static void bracket(List<Shape> shapes, double left, double right, Box figures, double y, double hook) {
        double line = Measures.TUPLET_BRACKET;
        shapes.add(new Stroke(new Point(left, y), new Point(left, y + hook), line));
        shapes.add(new Stroke(new Point(right, y), new Point(right, y + hook), line));
        if (figures.left() - AROUND_FIGURE > left) {
            shapes.add(new Stroke(new Point(left, y), new Point(figures.left() - AROUND_FIGURE, y), line));
            shapes.add(new Stroke(new Point(figures.right() + AROUND_FIGURE, y), new Point(right, y), line));
        }
    }

    /** What a tuplet says of itself, on a baseline of height zero, centred (rule: tuplet-ratio-shown). */
    static List<Shape> figures(TupletGroup tuplet, double middle) {
        var said = new ArrayList<>(glyphs(tuplet.actual()));
        if (!tuplet.isUsual()) {
            said.add(Glyph.TUPLET_COLON);
            said.addAll(glyphs(tuplet.normal()));
        }
        return row(said, middle, SCALE);
    }

    /** A number, on a baseline of height zero, centred. */
    public static List<Shape> figures(int number, double middle, double scale) {
        return row(glyphs(number), middle, scale);
    }

    private static List<Glyph> glyphs(int number) {
        return Integer.toString(number)
                .chars()
                .mapToObj(digit -> Glyph.tupletFigure(digit - '0'))
                .toList();
    }

    private static List<Shape> row(List<Glyph> glyphs, double middle, double scale) {
        var font = MusicFont.bravura();
        double x = middle - glyphs.stream().mapToDouble(font::width).sum() * scale / 2;
        var shapes = new ArrayList<Shape>();
        for (var glyph : glyphs) {
            shapes.add(new Shape.Sign(glyph, new Point(x, 0), scale));
            x += font.width(glyph) * scale;
        }
        return shapes;
    }

    public static Box box(List<Shape> shapes) {
        return shapes.stream().map(Shape::box).reduce(Box::union).orElseThrow();
    }
}
