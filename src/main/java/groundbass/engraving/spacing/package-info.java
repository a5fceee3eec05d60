/**
 * How wide the columns of a bar are and where a line is broken into systems. Knows nothing of pages and draws
 * nothing.
 */
package groundbass.engraving.spacing;
