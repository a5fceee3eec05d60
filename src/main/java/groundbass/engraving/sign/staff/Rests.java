package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.Columns;
import groundbass.score.Fraction;
import groundbass.writing.Element;
import groundbass.writing.Element.Rest;
import groundbass.writing.NoteValue.Base;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;

/**
 * Rests: whole ones hang from the fourth line, all others stand in the middle (rule: rest-height); of two voices, each
 * keeps to its own side and clear of the other's notes.
 */
public final class Rests implements Concern {
    private static final int VOICE_OFFSET = 4;
    private static final double FROM_HEAD = 0.7;
    private static final double CLEAR = 0.1;
    private static final int FARTHEST = 16;
    private static final Set<Kind> IN_THE_WAY =
            EnumSet.of(Kind.HEAD, Kind.STEM, Kind.BEAM, Kind.FLAG, Kind.DOT, Kind.ACCIDENTAL, Kind.REST);

    @Override
    public void draw(Sketch sketch) {
        beats(sketch).forEach(rests -> draw(sketch, rests));
        for (var span : sketch.plan().bars()) {
            wholeBars(sketch, span);
        }
    }

    private record Beat(int bar, int voice, Fraction start) {}

    /** The rests that each voice has in each beat. */
    private static Collection<List<Spot>> beats(Sketch sketch) {
        var beats = new LinkedHashMap<Beat, List<Spot>>();
        for (var spot : sketch.spots()) {
            if (spot.cell().isRest() && !isSaidAbove(spot)) {
                var meter = spot.span().bar().written().inForce().meter();
                var start = meter.beatStart(spot.cell().element().onset());
                var beat = new Beat(spot.span().index(), spot.cell().voice(), start);
                beats.computeIfAbsent(beat, each -> new ArrayList<>()).add(spot);
            }
        }
        return beats.values();
    }

    /** Whether the upper voice has the same rest at the same moment, which does for both (rule: rest-of-both-voices). */
    static boolean isSaidAbove(Spot rest) {
        return rest.cell().voice() > 0
                && rest.column().cells().stream()
                        .filter(each -> each.isRest() && each.voice() == 0)
                        .map(Cell::element)
                        .anyMatch(upper -> upper.value()
                                        .equals(rest.cell().element().value())
                                && upper.length().equals(rest.cell().element().length()));
    }

    /** At one height, that of the one that has to go farthest, unless others are in the way there (rule: rests-of-a-beat). */
    private static void draw(Sketch sketch, List<Spot> rests) {
        var raises = rests.stream().map(rest -> raise(sketch, rest)).toList();
        int farthest = raises.stream().max(Comparator.comparing(Math::abs)).orElseThrow();
        boolean together = rests.stream().allMatch(rest -> isClear(sketch, rest, farthest));
        for (int i = 0; i < rests.size(); i++) {
            draw(sketch, rests.get(i), together ? farthest : raises.get(i));
        }
    }

    private static void draw(Sketch sketch, Spot spot, int raise) {
        var base = spot.cell().element().value().base();
        double y = Measures.y(position(base) + raise);
        sketch.notation().add(Kind.REST, spot.owner(), new Shape.Sign(Glyph.rest(base), new Point(spot.x(), y), 1));
        for (var dot : spot.cell().dots()) {
            var moved = new Cell.DotPlace(dot.dx(), dot.position() + raise);
            sketch.notation().add(Kind.DOT, spot.owner(), NoteMarks.dot(spot, moved));
        }
    }

    private static int position(Base base) {
        return base == Base.WHOLE ? 6 : 4;
    }

    /**
     * An even number of positions up (or down), so that the rest keeps its relation to the lines: the voice's own side
     * in two voices, and from there the nearest place that is clear of notes and beams.
     */
    private static int raise(Sketch sketch, Spot rest) {
        int home = rest.cell().voices() < 2 ? 0 : side(sketch, rest);
        var obstacles = obstacles(sketch, ink(rest));
        int outward = rest.cell().voices() > 1 && rest.cell().voice() == 1 ? -1 : 1;
        for (int step = 0; step <= FARTHEST; step += 2) {
            for (int sign : new int[] {outward, -outward}) {
                int raise = home + sign * step;
                if (isClear(rest, raise, obstacles)) {
                    return raise;
                }
            }
        }
        return home;
    }

    private static boolean isClear(Sketch sketch, Spot rest, int raise) {
        return isClear(rest, raise, obstacles(sketch, ink(rest)));
    }

    private static boolean isClear(Spot rest, int raise, List<Box> obstacles) {
        int position = position(rest.cell().element().value().base()) + raise;
        return obstacles.stream()
                .noneMatch(ink(rest).moved(0, Measures.y(position)).grown(CLEAR)::overlaps);
    }

    /** Of a rest whose origin is at height zero. */
    private static Box ink(Spot rest) {
        return MusicFont.bravura()
                .box(Glyph.rest(rest.cell().element().value().base()))
                .moved(rest.x(), 0);
    }

    private static List<Box> obstacles(Sketch sketch, Box ink) {
        return sketch.notation().marks().stream()
                .filter(mark -> IN_THE_WAY.contains(mark.kind()))
                .filter(mark -> mark.box().right() > ink.left() && mark.box().left() < ink.right())
                .flatMap(mark -> mark.shape().pieces().stream())
                .toList();
    }

    /**
     * Where a voice's rests stand if nothing is in the way: beyond what the other voice sounds, in the middle if that
     * is silent too.
     */
    private static int side(Sketch sketch, Spot rest) {
        boolean upper = rest.cell().voice() == 0;
        if (isAllSilent(sketch, rest)) {
            return 0;
        }
        var sounding = besides(sketch, rest);
        int farthest = upper
                ? sounding.stream().mapToInt(Cell::highest).max().orElseThrow()
                : sounding.stream().mapToInt(Cell::lowest).min().orElseThrow();
        return clear(rest.cell().element().value().base(), upper, farthest);
    }

    /** Whether the other voice sounds nothing as long as the rest lasts. */
    static boolean isAllSilent(Sketch sketch, Spot rest) {
        return besides(sketch, rest).isEmpty();
    }

    /** What the other voice sounds while the rest lasts. */
    private static List<Cell> besides(Sketch sketch, Spot rest) {
        return sketch.spots().stream()
                .filter(spot -> spot.span() == rest.span()
                        && spot.cell().voice() != rest.cell().voice()
                        && !spot.cell().isRest()
                        && overlap(spot.cell().element(), rest.cell().element()))
                .map(Spot::cell)
                .toList();
    }

    private static int clear(Base base, boolean upper, int farthest) {
        var ink = MusicFont.bravura().box(Glyph.rest(base));
        int raise = upper ? VOICE_OFFSET : -VOICE_OFFSET;
        double head = Measures.y(farthest) + (upper ? -FROM_HEAD : FROM_HEAD);
        while (upper
                ? Measures.y(position(base) + raise) + ink.bottom() > head
                : Measures.y(position(base) + raise) + ink.top() < head) {
            raise += upper ? 2 : -2;
        }
        return raise;
    }

    private static boolean overlap(Element a, Element b) {
        return a.onset().isBefore(b.onset().plus(b.length()))
                && b.onset().isBefore(a.onset().plus(a.length()));
    }

    private static void wholeBars(Sketch sketch, BarSpan span) {
        if (span.bar().simile() || span.bar().bars() > 1) {
            return;
        }
        var voices = sketch.written(span).voices();
        for (int voice = 0; voice < voices.size(); voice++) {
            for (var element : voices.get(voice).elements()) {
                if (element instanceof Rest rest && rest.wholeBar() && !rest.hidden()) {
                    int raise = voices.size() < 2 ? 0 : voice == 0 ? VOICE_OFFSET : -VOICE_OFFSET;
                    double x = span.middle() - MusicFont.bravura().width(Glyph.REST_WHOLE) / 2;
                    var owner = Columns.owner(sketch.written(span), rest);
                    var at = new Point(x, Measures.y(position(Base.WHOLE) + raise));
                    sketch.notation().add(Kind.REST, owner, new Shape.Sign(Glyph.REST_WHOLE, at, 1));
                }
            }
        }
    }
}
