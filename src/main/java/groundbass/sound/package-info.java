/**
 * A performance and its band as samples: a string that is struck, stopped and touched for the bass, synthesized drums, a
 * keyboard for the chords, a click; mixed, and written as WAV or MP3. Knows nothing of how a line is written. Units are mutable and for one thread;
 * the same input gives the same samples.
 */
package groundbass.sound;
