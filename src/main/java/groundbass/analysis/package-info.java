/**
 * What the notes of a line mean in their key and over their chords. Knows nothing of how they are played, printed or
 * told.
 */
package groundbass.analysis;
