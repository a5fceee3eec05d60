/** Sheets as tagged, archival PDF. Knows nothing of how a page came about. */
package groundbass.engraving.pdf;
