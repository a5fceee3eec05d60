/**
 * A performance and its band as samples: a plucked string for the bass, synthesized drums, a soft tone for the chords, a
 * click; mixed, and written as WAV or MP3. Knows nothing of how a line is written. Units are mutable and for one thread;
 * the same input gives the same samples.
 */
package groundbass.sound;
