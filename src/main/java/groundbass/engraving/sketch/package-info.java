/** A system while it is being drawn: its staves, and how far up and down they are taken. Knows no single sign. */
package groundbass.engraving.sketch;
