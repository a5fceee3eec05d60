/** What is stacked above and below the staves, from the staff outward: words, numbers, lines that last over notes. */
package groundbass.engraving.sign.around;
