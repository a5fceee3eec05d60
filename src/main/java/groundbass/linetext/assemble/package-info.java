/**
 * From what was typed to a line: times, places, ties and repeats, and where in the text each note stands. Reads no
 * characters.
 */
package groundbass.linetext.assemble;
