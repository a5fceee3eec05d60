package groundbass.engraving;

import groundbass.writing.Head;

/**
 * A notehead in its column.
 *
 * @param position on the staff
 * @param dx of its left edge from the column
 */
record HeadPlace(Head head, int position, double dx, Glyph glyph) {
    double y() {
        return Measures.y(position);
    }

    double width() {
        return MusicFont.bravura().width(glyph);
    }

    double right() {
        return dx + width();
    }

    HeadPlace shifted(double by) {
        return new HeadPlace(head, position, dx + by, glyph);
    }
}
