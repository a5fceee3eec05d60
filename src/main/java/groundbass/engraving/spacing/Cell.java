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
        return heads.stream().mapToDouble(HeadPlace::width).max().orElse(Measures.HEAD_WIDTH);
    }

    /** The right edge of the heads from the column. */
    public double headsRight() {
        return heads.stream().mapToDouble(HeadPlace::right).max().orElse(0);
    }

    /** The left edge of the heads from the column. */
    double headsLeft() {
        return heads.stream().mapToDouble(HeadPlace::dx).min().orElse(0);
    }

    Cell shifted(double by) {
        var moved = heads.stream().map(head -> head.shifted(by)).toList();
        return new Cell(element, voice, voices, index, owner, up, beamed, shift + by, moved, dots);
    }

    Cell withDots(List<DotPlace> newDots) {
        return new Cell(element, voice, voices, index, owner, up, beamed, shift, heads, newDots);
    }
}
