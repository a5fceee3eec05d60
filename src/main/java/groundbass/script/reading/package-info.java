/**
 * From the words of a sentence to the claims in it. Knows no line of music but its length and tuning, and judges
 * nothing.
 */
package groundbass.script.reading;
