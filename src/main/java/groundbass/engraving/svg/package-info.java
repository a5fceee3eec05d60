/** Pages as SVG drawings. Knows nothing of how a page came about. */
package groundbass.engraving.svg;
