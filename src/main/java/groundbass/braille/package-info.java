/**
 * A line as music braille, for whoever reads with the fingers: cells of six dots, filled into rows and pages. What it
 * obeys stands in {@code src/main/docs/braille.md}. Knows no files, no web and no other renderer.
 */
package groundbass.braille;
