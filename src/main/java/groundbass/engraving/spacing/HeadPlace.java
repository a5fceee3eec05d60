package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.writing.Head;

/**
 * A notehead in its column.
 *
 * @param position on the staff
 * @param dx of its left edge from the column
 */
public record HeadPlace(Head head, int position, double dx, Glyph glyph) {
    public double y() {
        return Measures.y(position);
    }

    double width() {
        return MusicFont.bravura().width(glyph);
    }

    public double right() {
        return dx + width();
    }

    HeadPlace shifted(double by) {
        return new HeadPlace(head, position, dx + by, glyph);
    }
}
