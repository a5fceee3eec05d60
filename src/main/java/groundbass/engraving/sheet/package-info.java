/** Systems, headings, legends and prose filled into the pages of a sheet. Knows no file format. */
package groundbass.engraving.sheet;
