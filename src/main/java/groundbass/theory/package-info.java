/** Pitches, keys, chords and how they are spelled. Knows nothing of strings, bars or time. */
package groundbass.theory;
