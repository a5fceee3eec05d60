/** A line written as text, in the one way that this program writes it. Knows nothing of what was typed before. */
package groundbass.linetext.print;
