/**
 * What stands on a page: shapes, glyphs and text in staff spaces, and the canvas that draws them. Knows nothing of
 * notes.
 */
package groundbass.engraving.mark;
