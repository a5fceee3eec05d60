/**
 * A written line as pages of marks in staff spaces, and the canvases that draw them; the sub-rooms go from marks to
 * files. Knows nothing of the file system, clocks, languages or the walkthrough: words come in as arguments.
 */
package groundbass.engraving;
