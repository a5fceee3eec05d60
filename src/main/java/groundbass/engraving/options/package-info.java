/**
 * What a caller chooses about a sheet: paper, staves, letters, and the words that are printed. Knows nothing of how
 * any of it is drawn.
 */
package groundbass.engraving.options;
