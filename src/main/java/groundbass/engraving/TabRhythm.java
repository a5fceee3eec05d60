package groundbass.engraving;

import groundbass.engraving.Shape.Rect;
import groundbass.writing.BeamGroup;
import groundbass.writing.BeamGroup.Part;
import groundbass.writing.NoteValue.Base;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import java.util.ArrayList;
import java.util.List;

/** Stems, level beams, flags and rests of a tablature that stands alone (REFERENCE 3.11): all under the strings. */
final class TabRhythm implements Concern {
    private static final double FROM_STAFF = 1.1;
    private static final double LENGTH = 3.5;
    private static final double HALF_LENGTH = 1.6;
    private static final double STUB = 1.1;
    private static final double FROM_BEAM = 1.9;

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            if (spot.cell().isRest()) {
                if (isSilent(sketch, spot)) {
                    rest(sketch, spot);
                }
            } else if (isLeading(sketch, spot)) {
                stem(sketch, spot);
            }
        }
        for (var span : sketch.plan().bars()) {
            if (!span.bar().simile()) {
                var voices = sketch.written(span).voices();
                for (int voice = 0; voice < voices.size(); voice++) {
                    for (var group : voices.get(voice).beams()) {
                        beams(sketch, span, voice, group);
                    }
                }
            }
        }
        tuplets(sketch);
    }

    /** With two voices at one moment, the rhythm that is shown is the shorter note's. */
    private static boolean isLeading(Sketch sketch, Spot spot) {
        return sketch.spots().stream()
                .filter(other ->
                        other != spot && other.x() == spot.x() && !other.cell().isRest())
                .noneMatch(other -> other.cell()
                                .element()
                                .length()
                                .isBefore(spot.cell().element().length())
                        || (other.cell()
                                        .element()
                                        .length()
                                        .equals(spot.cell().element().length())
                                && other.cell().voice() < spot.cell().voice()));
    }

    /** Whether the other voice begins no note here, and no rest that is shown instead. */
    private static boolean isSilent(Sketch sketch, Spot rest) {
        return sketch.spots().stream()
                .filter(spot -> spot != rest && spot.x() == rest.x())
                .allMatch(spot -> spot.cell().isRest() && rest.cell().voice() == 0);
    }

    private static void rest(Sketch sketch, Spot spot) {
        var base = spot.cell().element().value().base();
        double y = sketch.tab().height() / 2 + (base == Base.WHOLE ? -Measures.TAB_GAP / 2 : 0);
        sketch.tab().add(Kind.REST, spot.owner(), new Shape.Sign(Glyph.rest(base), new Point(spot.x(), y), 1));
        for (var dot : spot.cell().dots()) {
            var at = new Point(spot.x() + dot.dx(), sketch.tab().height() / 2 - 0.5);
            sketch.tab().add(Kind.DOT, spot.owner(), new Shape.Sign(Glyph.DOT, at, 1));
        }
    }

    private static double tip(Sketch sketch) {
        return sketch.tab().height() + FROM_STAFF + LENGTH;
    }

    private static void stem(Sketch sketch, Spot spot) {
        var cell = spot.cell();
        var base = cell.element().value().base();
        if (base == Base.WHOLE) {
            return;
        }
        double tip = tip(sketch);
        double from = tip - (base == Base.HALF ? HALF_LENGTH : LENGTH);
        double x = spot.middle() - Measures.STEM / 2;
        sketch.tab().add(Kind.STEM, spot.owner(), new Rect(new Box(x, from, x + Measures.STEM, tip)));
        if (cell.flags() > 0) {
            var glyph = Glyph.flag(cell.flags(), false);
            sketch.tab().add(Kind.FLAG, spot.owner(), new Shape.Sign(glyph, new Point(x, tip), 1));
        }
        double dots = cell.flags() > 0 ? MusicFont.bravura().width(Glyph.flag(cell.flags(), false)) + 0.25 : 0.5;
        for (int dot = 0; dot < cell.element().value().dots(); dot++) {
            var at = new Point(x + dots + dot * 0.6, from + 0.4);
            sketch.tab().add(Kind.DOT, spot.owner(), new Shape.Sign(Glyph.DOT, at, 1));
        }
    }

    private static void beams(Sketch sketch, BarSpan span, int voice, BeamGroup group) {
        var spots = sketch.spots().stream()
                .filter(spot -> spot.span() == span && spot.cell().voice() == voice)
                .filter(spot ->
                        spot.cell().index() >= group.first() && spot.cell().index() <= group.last())
                .filter(spot -> !spot.cell().isRest() && isLeading(sketch, spot))
                .toList();
        for (int level = 0; level < 4; level++) {
            level(sketch, group, spots, level);
        }
    }

    private static void level(Sketch sketch, BeamGroup group, List<Spot> spots, int level) {
        double begun = Double.NaN;
        for (var spot : spots) {
            var parts = group.parts().get(spot.cell().index() - group.first());
            if (parts.size() <= level) {
                continue;
            }
            double x = spot.middle();
            Part part = parts.get(level);
            switch (part) {
                case BEGIN -> begun = x;
                case CONTINUE -> begun = Double.isNaN(begun) ? x : begun;
                case END -> beam(sketch, spot, Double.isNaN(begun) ? x - STUB : begun, x, level);
                case FORWARD_HOOK -> beam(sketch, spot, x, x + STUB, level);
                case BACKWARD_HOOK -> beam(sketch, spot, x - STUB, x, level);
            }
        }
    }

    private static void beam(Sketch sketch, Spot spot, double left, double right, int level) {
        double bottom = tip(sketch) - level * (Measures.BEAM + Measures.BEAM_GAP);
        var box = new Box(left - Measures.STEM / 2, bottom - Measures.BEAM, right + Measures.STEM / 2, bottom);
        sketch.tab().add(Kind.BEAM, spot.owner(), new Rect(box));
    }

    private static void tuplets(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            if (!span.bar().simile()) {
                var voice = sketch.written(span).voices().get(0);
                voice.tuplets().forEach(tuplet -> tuplet(sketch, span, voice, tuplet));
            }
        }
    }

    private static void tuplet(Sketch sketch, BarSpan span, Voice voice, TupletGroup tuplet) {
        var spots = sketch.spots().stream()
                .filter(spot -> spot.span() == span && spot.cell().voice() == 0)
                .filter(spot ->
                        spot.cell().index() >= tuplet.first() && spot.cell().index() <= tuplet.last())
                .toList();
        if (spots.isEmpty()) {
            return;
        }
        double left = spots.get(0).middle() - 0.5;
        double right = Math.min(spots.get(spots.size() - 1).middle() + 0.5, span.end() - 0.3);
        double y = tip(sketch) + FROM_BEAM;
        var shapes = new ArrayList<>(Tuplets.figures(tuplet.actual(), (left + right) / 2));
        boolean bare = voice.beams().stream().anyMatch(beam -> Tuplets.covers(beam, tuplet));
        if (!bare) {
            Tuplets.bracket(shapes, left, right, Tuplets.box(shapes), -0.6, -0.6);
        }
        shapes.forEach(shape -> sketch.tab().add(Kind.TUPLET, spots.get(0).owner(), shape.moved(0, y)));
    }
}
