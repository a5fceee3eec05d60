/**
 * A performance and its band as samples, synthesized: the sub-rooms are a string, drums, keys and their mix. Knows
 * nothing of files or of how a line is written. Units are mutable and for one thread; the same input gives the same
 * samples.
 */
package groundbass.sound;
