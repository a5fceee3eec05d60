/**
 * A written line as pages of marks in staff spaces, and the canvases that draw them. Knows nothing of files, clocks,
 * languages or the walkthrough: words come in as arguments.
 */
package groundbass.engraving;
