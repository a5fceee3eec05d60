package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Rect;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Labels;
import groundbass.writing.BeamGroup;
import groundbass.writing.NoteValue.Base;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import java.util.ArrayList;
import java.util.List;

/**
 * StemMarks, level beams, flags and rests of a tablature that stands alone (rule: tab-rhythm): under the strings, but of
 * two voices the upper one's over them.
 */
public final class TabRhythm implements Concern {
    private static final double FROM_STAFF = 1.1;
    private static final double LENGTH = 3.5;
    private static final double HALF_LENGTH = 1.6;
    private static final double STUB = 1.1;
    private static final double FROM_BEAM = 0.4;
    private static final double FROM_TIP = 0.4;
    private static final double PAST_BEND = 2.1;

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            var side = Side.of(sketch, spot.cell().voice(), spot.cell().voices());
            if (!spot.cell().isRest()) {
                stem(sketch, spot, side);
            } else if (!Rests.isSaidAbove(spot)) {
                rest(sketch, spot, side);
            }
        }
        for (var span : sketch.plan().bars()) {
            if (!span.bar().simile()) {
                bar(sketch, span);
            }
        }
    }

    private static void bar(Sketch sketch, BarSpan span) {
        var voices = sketch.written(span).voices();
        for (int voice = 0; voice < voices.size(); voice++) {
            for (var group : voices.get(voice).beams()) {
                var spots = spots(sketch, span, voice, group.first(), group.last());
                beams(sketch, spots, group, side(sketch, spots));
            }
            for (var tuplet : voices.get(voice).tuplets()) {
                var spots = spots(sketch, span, voice, tuplet.first(), tuplet.last());
                if (!spots.isEmpty()) {
                    tuplet(sketch, spots, voices.get(voice), tuplet, side(sketch, spots));
                }
            }
        }
    }

    private static Side side(Sketch sketch, List<Spot> spots) {
        int voices = spots.stream().mapToInt(spot -> spot.cell().voices()).max().orElse(1);
        return Side.of(sketch, spots.get(0).cell().voice(), voices);
    }

    /** Where a voice's rhythm stands: how far its stems' ends lie from the strings, and which way is outward. */
    private record Side(boolean above, double edge) {
        static Side of(Sketch sketch, int voice, int voices) {
            boolean above = voices > 1 && voice == 0;
            return new Side(above, above ? 0 : sketch.tab().height());
        }

        /** A height so far outward from the strings. */
        double out(double distance) {
            return above ? edge - distance : edge + distance;
        }

        double tip() {
            return out(FROM_STAFF + LENGTH);
        }
    }

    private static List<Spot> spots(Sketch sketch, BarSpan span, int voice, int first, int last) {
        return sketch.spots().stream()
                .filter(spot -> spot.span() == span && spot.cell().voice() == voice)
                .filter(spot -> spot.cell().index() >= first && spot.cell().index() <= last)
                .toList();
    }

    /** Among the numbers where nothing else sounds, else beyond its voice's stems. */
    private static void rest(Sketch sketch, Spot spot, Side side) {
        var base = spot.cell().element().value().base();
        boolean alone = spot.cell().voices() < 2 || Rests.isAllSilent(sketch, spot);
        var ink = MusicFont.bravura().box(Glyph.rest(base));
        double middle = sketch.tab().height() / 2 + (base == Base.WHOLE ? -Measures.TAB_GAP / 2 : 0);
        double beyond = side.out(FROM_STAFF + LENGTH + FROM_TIP) - (side.above() ? ink.bottom() : ink.top());
        double y = alone ? middle : beyond;
        sketch.tab().add(Kind.REST, spot.owner(), new Shape.Sign(Glyph.rest(base), new Point(spot.x(), y), 1));
        for (var dot : spot.cell().dots()) {
            var at = new Point(spot.x() + dot.dx(), y - 0.5);
            sketch.tab().add(Kind.DOT, spot.owner(), new Shape.Sign(Glyph.DOT, at, 1));
        }
    }

    private static void stem(Sketch sketch, Spot spot, Side side) {
        var cell = spot.cell();
        var base = cell.element().value().base();
        if (base == Base.WHOLE) {
            return;
        }
        double length = base == Base.HALF ? HALF_LENGTH : LENGTH;
        double root = side.out(FROM_STAFF + LENGTH - length);
        double x = spot.middle() - Measures.STEM / 2;
        var box = new Box(x, Math.min(root, side.tip()), x + Measures.STEM, Math.max(root, side.tip()));
        sketch.tab().add(Kind.STEM, spot.owner(), new Rect(box));
        if (cell.flags() > 0) {
            var glyph = Glyph.flag(cell.flags(), side.above());
            sketch.tab().add(Kind.FLAG, spot.owner(), new Shape.Sign(glyph, new Point(x, side.tip()), 1));
        }
        double flag = cell.flags() > 0 ? MusicFont.bravura().width(Glyph.flag(cell.flags(), side.above())) : 0.25;
        boolean bent = side.above()
                && spot.column().cells().stream()
                        .flatMap(each -> each.heads().stream())
                        .anyMatch(head -> head.head().note().ornaments().bend().isPresent());
        flag = bent ? Math.max(flag, Labels.reach(spot.column().cells()) + PAST_BEND) : flag;
        for (int dot = 0; dot < cell.element().value().dots(); dot++) {
            var at = new Point(x + flag + 0.25 + dot * 0.6, side.out(FROM_STAFF + LENGTH - length + 0.4));
            sketch.tab().add(Kind.DOT, spot.owner(), new Shape.Sign(Glyph.DOT, at, 1));
        }
    }

    private static void beams(Sketch sketch, List<Spot> spots, BeamGroup group, Side side) {
        var notes = spots.stream().filter(spot -> !spot.cell().isRest()).toList();
        for (int level = 0; level < 4; level++) {
            level(sketch, notes, group, level, side);
        }
    }

    private static void level(Sketch sketch, List<Spot> notes, BeamGroup group, int level, Side side) {
        double begun = Double.NaN;
        for (var spot : notes) {
            var parts = group.parts().get(spot.cell().index() - group.first());
            if (parts.size() <= level) {
                continue;
            }
            double x = spot.middle();
            switch (parts.get(level)) {
                case BEGIN -> begun = x;
                case CONTINUE -> {}
                case END -> beam(sketch, spot, begun, x, level, side);
                case FORWARD_HOOK -> beam(sketch, spot, x, x + STUB, level, side);
                case BACKWARD_HOOK -> beam(sketch, spot, x - STUB, x, level, side);
            }
        }
    }

    private static void beam(Sketch sketch, Spot spot, double left, double right, int level, Side side) {
        double far = FROM_STAFF + LENGTH - level * (Measures.BEAM + Measures.BEAM_GAP);
        double one = side.out(far);
        double other = side.out(far - Measures.BEAM);
        var box = new Box(
                left - Measures.STEM / 2, Math.min(one, other), right + Measures.STEM / 2, Math.max(one, other));
        sketch.tab().add(Kind.BEAM, spot.owner(), new Rect(box));
    }

    private static void tuplet(Sketch sketch, List<Spot> spots, Voice voice, TupletGroup tuplet, Side side) {
        double left = spots.get(0).middle() - 0.5;
        double right = Math.min(
                spots.get(spots.size() - 1).middle() + 0.5, spots.get(0).span().end() - 0.3);
        var shapes = new ArrayList<>(Tuplets.figures(tuplet, (left + right) / 2));
        double height = Tuplets.box(shapes).height();
        double tip = side.above()
                ? Math.min(side.tip(), sketch.tab().top(left, right))
                : Math.max(side.tip(), sketch.tab().bottom(left, right));
        double y = side.above() ? tip - FROM_BEAM : tip + FROM_BEAM + height;
        boolean bare = voice.beams().stream().anyMatch(beam -> Tuplets.covers(beam, tuplet));
        if (!bare) {
            Tuplets.bracket(shapes, left, right, Tuplets.box(shapes), -0.6, side.above() ? 0.6 : -0.6);
        }
        shapes.forEach(shape -> sketch.tab().add(Kind.TUPLET, spots.get(0).owner(), shape.moved(0, y)));
    }
}
