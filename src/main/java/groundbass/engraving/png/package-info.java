/** The music of a page as a picture without a ground. Knows nothing of how a page came about. */
package groundbass.engraving.png;
