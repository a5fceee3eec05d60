package groundbass.engraving.spacing;

import groundbass.engraving.mark.Measures;
import groundbass.score.Passage;
import groundbass.writing.Element;
import groundbass.writing.NoteValue.Base;
import java.util.List;

/**
 * An element of a voice in its column, before the column has a place.
 *
 * @param voice 0, or 1 for the lower of two
 * @param voices how many stand here: two only in the beats in which a note is held while others move
 * @param index in its voice
 * @param shift to the right of the column, where the other voice stands in the way
 * @param heads lowest first; empty for a rest
 */
public record Cell(
        Element element,
        int voice,
        int voices,
        int index,
        Passage owner,
        boolean up,
        boolean beamed,
        double shift,
        List<HeadPlace> heads,
        List<DotPlace> dots) {

    /** A dot of length: the left edge from the column, and the staff position. */
    public record DotPlace(double dx, int position) {}

    public boolean isRest() {
        return heads.isEmpty();
    }

    public int lowest() {
        return heads.get(0).position();
    }

    public int highest() {
        return heads.get(heads.size() - 1).position();
    }

    public boolean hasStem() {
        return !isRest() && element.value().base() != Base.WHOLE;
    }

    public int flags() {
        return beamed || isRest() ? 0 : element.value().base().beams();
    }

    /** The left edge of the stem from the column. */
    public double stemDx() {
        return up ? shift + headWidth() - Measures.STEM : shift;
    }

    double headWidth() {
        double width = 0;
        for (var head : heads) {
            width = Math.max(width, head.width());
        }
        return heads.isEmpty() ? Measures.HEAD_WIDTH : width;
    }

    /** The right edge of the heads from the column. */
    public double headsRight() {
        double right = heads.isEmpty() ? 0 : Double.NEGATIVE_INFINITY;
        for (var head : heads) {
            right = Math.max(right, head.right());
        }
        return right;
    }

    /** The left edge of the heads from the column. */
    double headsLeft() {
        double left = heads.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
        for (var head : heads) {
            left = Math.min(left, head.dx());
        }
        return left;
    }

    Cell shifted(double by) {
        var moved = heads.stream().map(head -> head.shifted(by)).toList();
        return new Cell(element, voice, voices, index, owner, up, beamed, shift + by, moved, dots);
    }

    Cell withDots(List<DotPlace> newDots) {
        return new Cell(element, voice, voices, index, owner, up, beamed, shift, heads, newDots);
    }
}
