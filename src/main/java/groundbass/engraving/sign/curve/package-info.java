/** What leads from note to note: ties, slurs, slides, bends, grace notes; each keeps clear of the staves' own signs. */
package groundbass.engraving.sign.curve;
