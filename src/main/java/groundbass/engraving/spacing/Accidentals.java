package groundbass.engraving.spacing;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.score.Passage;
import groundbass.writing.Head;
import groundbass.writing.Head.Accidental;
import groundbass.writing.Head.Sign;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Accidentals of one column, stacked leftward (rule: accidental-columns): the top note's stands nearest, then the
 * bottom one's, then alternating inward; whatever would touch another goes farther left.
 */
public final class Accidentals {
    /** rule: accidental-gap. */
    private static final double TO_HEAD = 0.2;

    private static final double BETWEEN = 0.12;

    private Accidentals() {}

    /** @param dx of the origin from the column */
    public record Place(Glyph glyph, double dx, int position, boolean courtesy, Passage owner) {
        private static final double PARENTHESIS = 0.6;

        /** Around the column, with its parentheses if it only reminds. */
        public Box box() {
            var box = MusicFont.bravura().box(glyph).moved(dx, Measures.y(position));
            return courtesy
                    ? new Box(box.left() - PARENTHESIS, box.top(), box.right() + PARENTHESIS, box.bottom())
                    : box;
        }
    }

    public static Glyph glyph(Sign sign) {
        return switch (sign) {
            case DOUBLE_FLAT -> Glyph.DOUBLE_FLAT;
            case FLAT -> Glyph.FLAT;
            case NATURAL -> Glyph.NATURAL;
            case SHARP -> Glyph.SHARP;
            case DOUBLE_SHARP -> Glyph.DOUBLE_SHARP;
        };
    }

    static List<Place> stack(List<Cell> cells) {
        var wanted = new ArrayList<Place>();
        double heads = 0;
        for (var cell : cells) {
            heads = Math.min(
                    heads, cell.headsLeft() - (cell.heads().stream().anyMatch(h -> Heads.isGhost(h.head())) ? 0.4 : 0));
            for (var head : cell.heads()) {
                sign(head.head())
                        .ifPresent(accidental -> wanted.add(new Place(
                                glyph(accidental.sign()), 0, head.position(), accidental.courtesy(), cell.owner())));
            }
        }
        wanted.sort(Comparator.comparingInt(Place::position).reversed());
        return stack(zigzag(wanted), heads - TO_HEAD);
    }

    /** The one before the large head. */
    private static Optional<Accidental> sign(Head head) {
        return head.bentBefore().isPresent() ? head.bentBefore().get().accidental() : head.accidental();
    }

    private static List<Place> zigzag(List<Place> highestFirst) {
        var order = new ArrayList<Place>();
        for (int i = 0; i < highestFirst.size(); i++) {
            order.add(highestFirst.get(i % 2 == 0 ? i / 2 : highestFirst.size() - 1 - i / 2));
        }
        return order;
    }

    private static List<Place> stack(List<Place> order, double right) {
        var placed = new ArrayList<Place>();
        for (var place : order) {
            double edge = right;
            var tried = endingAt(place, edge);
            for (var blocking = blocking(placed, tried); blocking != null; blocking = blocking(placed, tried)) {
                edge = blocking.box().left() - BETWEEN;
                tried = endingAt(place, edge);
            }
            placed.add(tried);
        }
        return placed;
    }

    private static Place endingAt(Place place, double right) {
        return new Place(
                place.glyph(),
                place.dx() + right - place.box().right(),
                place.position(),
                place.courtesy(),
                place.owner());
    }

    private static Place blocking(List<Place> placed, Place tried) {
        return placed.stream()
                .filter(other -> other.box().grown(BETWEEN / 2).overlaps(tried.box()))
                .findFirst()
                .orElse(null);
    }
}
