/**
 * What plays along with a line: drum grids as text, chord voicings, the click. Knows moments and strokes, nothing of
 * instruments, files or samples.
 */
package groundbass.groove;
